% 1m2  Across the Flats -- Viola

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../strings.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Viola"
}

\score {
  \new Staff = "viola" << \global \viola >>
  \layout { }
}
