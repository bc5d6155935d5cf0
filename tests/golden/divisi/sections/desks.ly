\version "2.24.0"
violas = {
  <c' e'>1 | <d' f'>2^"1 desk" <c' e' g'> | <c' e'>1 | % 3
  <c' e'>1^"solo" | c'1^"tutti" | <c' e' g'>2^"half" <d' f'> | c'1^"tutti" | % 7
}
\score { \new Staff \with { instrumentName = "Violas" } \violas }
