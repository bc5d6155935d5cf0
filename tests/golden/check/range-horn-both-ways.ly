\version "2.24.0"
<<
  \new Staff \with { instrumentName = "Horn 1 in F" } { \transposition f c'4 g' g'' a'' | }
  \new Staff \with { instrumentName = "Horn 2 in F" } { b,4 c d' d'' | }
  \new Staff \with { instrumentName = "Horn 3" } { \clef bass f,4 c c e | }
>>
