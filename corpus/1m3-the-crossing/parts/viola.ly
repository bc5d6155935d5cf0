% 1m3  The Crossing -- Viola

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../strings.ily"

\header {
  title = "1m3  The Crossing"
  instrument = "Viola"
}

\score {
  \new Staff = "viola" << \global \viola >>
  \layout { }
}
