% 1m3  The Crossing -- Oboe 1

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../woodwinds.ily"

\header {
  title = "1m3  The Crossing"
  instrument = "Oboe 1"
}

\score {
  \new Staff = "oboe1" << \global \oboeOne >>
  \layout { }
}
