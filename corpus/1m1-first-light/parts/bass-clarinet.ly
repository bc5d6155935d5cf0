% 1m1  First Light over Hesk -- Bass clarinet in B flat

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../woodwinds.ily"

% entered at sounding pitch, printed a tone higher in the bass clef

\header {
  title = "1m1  First Light over Hesk"
  instrument = "Bass clarinet in B flat"
}

\score {
  \new Staff = "bassclarinet" {
    \transposition bes
    \transpose bes c' << \global \bassClarinet >>
  }
  \layout { }
}
