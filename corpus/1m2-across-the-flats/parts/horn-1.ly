% 1m2  Across the Flats -- Horn 1 in F

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../brass.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Horn 1 in F"
}

\score {
  \new Staff = "horn1" << \globalInF \hornOne >>
  \layout { }
}
