% 1m1  First Light over Hesk -- Cello

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../strings.ily"

\header {
  title = "1m1  First Light over Hesk"
  instrument = "Cello"
}

\score {
  \new Staff = "cello" << \global \cello >>
  \layout { }
}
