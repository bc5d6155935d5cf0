% 1m1  First Light over Hesk -- Timpani

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../percussion.ily"

\header {
  title = "1m1  First Light over Hesk"
  instrument = "Timpani"
}

\score {
  \new Staff = "timpani" << \global \timpani >>
  \layout { }
}
