% 1m1  First Light over Hesk -- Flute 1

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../woodwinds.ily"

\header {
  title = "1m1  First Light over Hesk"
  instrument = "Flute 1"
}

\score {
  \new Staff = "flute1" << \global \fluteOne >>
  \layout { }
}
