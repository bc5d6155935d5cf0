% 1m1  First Light over Hesk -- Violin II

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../strings.ily"

\header {
  title = "1m1  First Light over Hesk"
  instrument = "Violin II"
}

\score {
  \new Staff = "violin2" << \global \violinTwo >>
  \layout { }
}
