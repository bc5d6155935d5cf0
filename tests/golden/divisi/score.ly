\version "2.24.0"
violin = \relative c'' {
  \time 4/4
  a4 b c d | % 1
  <c e>2 <b d>4 <b d> | % 2
  c2 <a c e>4 <gis b e>~ | % 3
  <gis b e>4 r <c e>2( | % 4
  <b d>1) | % 5
  r2 a2 | % 6
  <g d' b'>4^"non div." r r2 | % 7
  <c, g' e'>2^"div." g'2 | % 8
  a1^"unis." | % 9
}
flutes = { c''2 d'' | <c'' e''>2 <d'' f''>4 e''^"1." | <c'' e''>2 d''2 | R1*6 }
harp = { <c' e' g'>1 | R1*8 }
viola = { <c' e' g' c''>1 | c'1 | R1*7 }

\score {
  <<
    \new Staff \with { instrumentName = "Violin I" } \violin
    \new Staff \with { instrumentName = "Flutes 1.2" } \flutes
    \new Staff \with { instrumentName = "Harp" } \harp
    \new Staff \with { instrumentName = "Viola" } \viola
  >>
}
