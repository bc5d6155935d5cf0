\version "2.24.0"
\score {
  <<
    \new DrumStaff \with { instrumentName = "Percussion" } \drummode { sn4 bd tri tri | cymc1 | sn1 | R1 | }
    \new Staff \with { instrumentName = "Glockenspiel" } { R1*2 | c''1 | R1 | }
    \new Staff \with { instrumentName = "Triangle" } { R1*2 | R1 | c''1 | }
    \new Staff \with { instrumentName = "Timpani" } { R1*2 | R1 | c1 | }
  >>
}
