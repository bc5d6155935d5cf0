\version "2.24.0"
\score { \new Staff \with { instrumentName = "Violin I" } \relative c' { \tempo 4 = 96 c2 d | e1 | } }
