% 1m1  First Light over Hesk -- Horn 1 in F

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../brass.ily"

% entered at sounding pitch, printed a fifth higher

\header {
  title = "1m1  First Light over Hesk"
  instrument = "Horn 1 in F"
}

\score {
  \new Staff = "horn1" {
    \transposition f
    \transpose f c' << \global \hornOne >>
  }
  \layout { }
}
