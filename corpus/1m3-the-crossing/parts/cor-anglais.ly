% 1m3  The Crossing -- Cor anglais in F

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../woodwinds.ily"

% entered at sounding pitch, printed a fifth higher

\header {
  title = "1m3  The Crossing"
  instrument = "Cor anglais in F"
}

\language "nederlands"

\score {
  \new Staff = "coranglais" {
    \transposition f
    \transpose f c' << \global \corAnglais >>
  }
  \layout { }
}
