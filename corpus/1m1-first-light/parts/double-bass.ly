% 1m1  First Light over Hesk -- Double bass

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../strings.ily"

\header {
  title = "1m1  First Light over Hesk"
  instrument = "Double bass"
}

\score {
  \new Staff = "bass" << \global \doubleBass >>
  \layout { }
}
