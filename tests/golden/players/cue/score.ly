\version "2.24.0"
\include "notes.ily"
\score {
  <<
    \new Staff \with { instrumentName = "Flutes 1, 2" } \flutes
    \new Staff \with { instrumentName = "Trumpet" } \trumpet
    \new DrumStaff \with { instrumentName = "Percussion" } \drums
  >>
}
