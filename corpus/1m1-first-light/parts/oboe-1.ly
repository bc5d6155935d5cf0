% 1m1  First Light over Hesk -- Oboe 1

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../woodwinds.ily"

\header {
  title = "1m1  First Light over Hesk"
  instrument = "Oboe 1"
}

\score {
  \new Staff = "oboe1" << \global \oboeOne >>
  \layout { }
}
