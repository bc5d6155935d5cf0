% 1m1  First Light over Hesk -- Clarinet 1 in B flat

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../woodwinds.ily"

% entered at sounding pitch, printed a tone higher

\header {
  title = "1m1  First Light over Hesk"
  instrument = "Clarinet 1 in B flat"
}

\score {
  \new Staff = "clarinet1" {
    \transposition bes
    \transpose bes c' << \global \clarinetOne >>
  }
  \layout { }
}
