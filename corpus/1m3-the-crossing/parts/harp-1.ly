% 1m3  The Crossing -- Harp 1

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../harps-keys.ily"

\header {
  title = "1m3  The Crossing"
  instrument = "Harp 1"
}

\score {
  \new Staff = "harp1" << \global \harpOne >>
  \layout { }
}
