% 1m2  Across the Flats -- Horn 3 in F

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../brass.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Horn 3 in F"
}

\score {
  \new Staff = "horn3" << \globalInF \hornThree >>
  \layout { }
}
