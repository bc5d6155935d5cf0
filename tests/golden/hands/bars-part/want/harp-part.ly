\version "2.24.0"
\include "harp.ily"

% the clefs around the notes stay here, too
\score {
  \new PianoStaff = "harp1" <<
    \new Staff = "harp1Right" { \clef bass \harpOneRight \clef treble }
    \new Staff = "harp1Left" { \harpOneLeft }
  >>
  \layout { }
}
