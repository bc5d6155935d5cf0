\version "2.24.0"
viola = \relative c' { e4 f g2 | c,4^"pizz." d e2 | f1^"arco" | g1 }
\score { \new Staff \with { instrumentName = "Viola" } { \clef alto \viola } }
