% 1m3  The Crossing -- Double bass

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../strings.ily"

\header {
  title = "1m3  The Crossing"
  instrument = "Double bass"
}

\score {
  \new Staff = "bass" << \global \doubleBass >>
  \layout { }
}
