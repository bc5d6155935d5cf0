% 1m3  The Crossing -- Celesta

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../harps-keys.ily"

\header {
  title = "1m3  The Crossing"
  instrument = "Celesta"
}

\score {
  \new PianoStaff = "celesta" <<
    \new Staff = "celestau" << \global \celestaUpper >>
    \new Staff = "celestal" << \global \celestaLower >>
  >>
  \layout { }
}
