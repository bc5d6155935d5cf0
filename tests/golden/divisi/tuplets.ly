\version "2.24.0"
violin = \relative c'' {
  \time 4/4
  c2 \tuplet 3/2 { r8 c <c e> } c4 | % 1
  \tuplet 3/2 4 { <c e>8( <d f> <e g>) c d e } r2 | % 2
  <c e>4 \tuplet 3/2 { <d f>8 r e } \times 2/3 { e4 <f a> <e g> } | % 3
  \tuplet 3/2 { c4 \tuplet 3/2 { <c e>8 d e } c4 } c2 | % 4
  \tuplet 3/2 { <c e g b d f a>4 <c e> d } c2 | % 5
  c1 % 6
}
\score { \new Staff \with { instrumentName = "Violin" } \violin }
