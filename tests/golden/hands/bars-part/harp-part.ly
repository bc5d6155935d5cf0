\version "2.24.0"
\include "harp.ily"

% the clefs around the notes stay here, too
\score {
  \new Staff = "harp1" { \clef bass \harpOne \clef treble }
  \layout { }
}
