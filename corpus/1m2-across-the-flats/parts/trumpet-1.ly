% 1m2  Across the Flats -- Trumpet 1 in B flat

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../brass.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Trumpet 1 in B flat"
}

\score {
  \new Staff = "trumpet1" << \globalInBflat \trumpetOne >>
  \layout { }
}
