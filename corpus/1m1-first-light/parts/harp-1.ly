% 1m1  First Light over Hesk -- Harp 1

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../harps-keys.ily"

\header {
  title = "1m1  First Light over Hesk"
  instrument = "Harp 1"
}

\score {
  \new Staff = "harp1" << \global \harpOne >>
  \layout { }
}
