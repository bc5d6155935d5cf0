\version "2.24.0"
horns = { <c' e' g'>2 <d' f'> | g'4^"2." a' <c' e' g'>2 | <c' g'>4 c'^"a 3" <c' e'>2 | }
\score { \new Staff \with { instrumentName = "Horns 2.3.4" } \horns }
