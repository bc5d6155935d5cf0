% 1m1  First Light over Hesk -- Trumpet 1 in B flat

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../brass.ily"

% entered at sounding pitch, printed a tone higher

\header {
  title = "1m1  First Light over Hesk"
  instrument = "Trumpet 1 in B flat"
}

\score {
  \new Staff = "trumpet1" {
    \transposition bes
    \transpose bes c' << \global \trumpetOne >>
  }
  \layout { }
}
