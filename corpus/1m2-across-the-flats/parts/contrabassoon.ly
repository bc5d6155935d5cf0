% 1m2  Across the Flats -- Contrabassoon

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../woodwinds.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Contrabassoon"
}

\score {
  \new Staff = "contrabassoon" << \global \contrabassoon >>
  \layout { }
}
