% 1m3  The Crossing -- Flute 1

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../woodwinds.ily"

\header {
  title = "1m3  The Crossing"
  instrument = "Flute 1"
}

\score {
  \new Staff = "flute1" << \global \fluteOne >>
  \layout { }
}
