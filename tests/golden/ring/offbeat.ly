\version "2.24.0"
\score { \new Staff \with { instrumentName = "Harp" } { f'16 a' c'' f'' a' c'' f''8 r2 | g'8 r r g' r4 r8 g' | r2 r4 r8 g' | R1 | } }
