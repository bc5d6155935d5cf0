% 1m3  The Crossing -- Vibraphone

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../percussion.ily"

\header {
  title = "1m3  The Crossing"
  instrument = "Vibraphone"
}

\score {
  \new Staff = "vibes" << \global \vibraphone >>
  \layout { }
}
