% 1m2  Across the Flats -- Harp 1

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../harps-keys.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Harp 1"
}

\score {
  \new Staff = "harp1" << \global \harpOne >>
  \layout { }
}
