\version "2.24.0"
global = { \time 4/4 s1 \time 3/4 s2. s2. s2. \time 4/4 s2 s2 }
viola = {
  <c' e'>4 d' e' <d' f'>~ | <d' f'>2.~ | <d' f'>2 <c' e'>4 | \tuplet 3/2 { r8 c' <c' e'> } c'2 | % 4
  c'1
}
\score { \new Staff \with { instrumentName = "Viola" } << \global \viola >> }
