% 1m2  Across the Flats -- Percussion

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../percussion.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Percussion"
}

\score {
  \new DrumStaff = "drums" << \global \percussionOne >>
  \layout { }
}
