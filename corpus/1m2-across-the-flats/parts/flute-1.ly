% 1m2  Across the Flats -- Flute 1

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../woodwinds.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Flute 1"
}

\score {
  \new Staff = "flute1" << \global \fluteOne >>
  \layout { }
}
