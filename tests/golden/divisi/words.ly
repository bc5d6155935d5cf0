\version "2.24.0"
violin = \relative c'' {
  <c e>4 <d f>^"div." <c e> <b d>^"unis." | << { g'2 f } \\ { d2 c } >> |
  <c e>2 <b d> | a1 |
}
cello = \relative c {
  e4 f g a | <c, g'>2^"non div." <d a'> | c4^"unis." d e f | g1 |
}
\score {
  <<
    \new Staff \with { instrumentName = "Violin I" } \violin
    \new Staff \with { instrumentName = "Cello" } { \clef bass \cello }
  >>
}
