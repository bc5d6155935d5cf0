\version "2.24.0"
one = { c'4^"pizz." r e'8 r r4 | c'4 r2. | }
two = { c'4^"pizz." r e'8 r r4 | g4 r2. | }
\score { \new Staff \with { instrumentName = "Cello" } \partCombine \one \two }
