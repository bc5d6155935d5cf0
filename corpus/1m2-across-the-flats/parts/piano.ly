% 1m2  Across the Flats -- Piano

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../harps-keys.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Piano"
}

\score {
  \new PianoStaff = "piano" <<
    \new Staff = "pianou" << \global \pianoUpper >>
    \new Staff = "pianol" << \global \pianoLower >>
  >>
  \layout { }
}
