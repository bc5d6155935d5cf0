% 1m2  Across the Flats -- Tuba

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../brass.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Tuba"
}

\score {
  \new Staff = "tuba" << \global \tuba >>
  \layout { }
}
