\version "2.24.0"
\include "music.ily"

\score {
  <<
    \new Staff \with { instrumentName = "Flute" } \flute
    \new Staff \with { instrumentName = "Oboe" } \oboe
    \new Staff \with { instrumentName = "Bassoon" } { \clef bass \bassoon }
    \new Staff \with { instrumentName = "Harp" } \harp
    \new Lyrics \lyricmode { a1 b c }
  >>
}
