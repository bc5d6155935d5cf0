% 1m3  The Crossing -- Violin I

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../strings.ily"

\header {
  title = "1m3  The Crossing"
  instrument = "Violin I"
}

\score {
  \new Staff = "violin1" << \global \violinOne >>
  \layout { }
}
