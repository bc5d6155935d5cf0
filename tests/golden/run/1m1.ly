\version "2.24.0"
violin = \relative c'' { \tempo 4 = 96 c1^"arco" | d2 e8^"pizz." f g a | b1^"arco" | c1 | }
harp = { <c' e' g'>4 r r2 | <d' f'>4 r r2 | R1*2 | }
\score { << \new Staff \with { instrumentName = "Violin I" } \violin \new Staff \with { instrumentName = "Harp" } \harp >> }
