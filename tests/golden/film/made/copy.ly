\version "2.24.0"
\include "words.ily"
\score {
  <<
    \new Staff \with { instrumentName = "Flute 1" } { \tune }
    \new Staff \with { instrumentName = "Flute 2" } { c'4 d' e' f' | }
    \new Staff \with { instrumentName = "Oboe" } { c'4 d' e' f' | c'4 d' e' f' | }
    \new DrumStaff \with { instrumentName = "Percussion" } \drummode { bd4 sn tri r | }
    \new Staff \with { instrumentName = "Fog" } { c'1 | }
  >>
}
