% 1m2  Across the Flats -- Violin I

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../strings.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Violin I"
}

\score {
  \new Staff = "violin1" << \global \violinOne >>
  \layout { }
}
