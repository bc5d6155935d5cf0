\version "2.24.0"
clarinet = \relative c'' {
  \transposition bes
  \tuplet 3/2 { c4(\p d e) } f2 | \tuplet 3/2 4 { c8 r d e4 f8 } \times 4/5 { g16-. f e d c } r4 | % 1-2
  \tuplet 3/2 { c2 \tuplet 5/4 { d8 e f g a } d,2~ } | \tuplet 3/2 { d4 e2~ e2. c2. b4 a8 g a b } | % 3-5
  c1 |
}
\score {
  <<
    \new Staff = "fl" \with { instrumentName = "Flute" } \relative c'' { g1*0 R1*4 r2 r4 r | R1 | }
    \new Staff = "cl" \with { instrumentName = "Clarinet in Bb" } \clarinet
    \new Staff = "ob" \with { instrumentName = "Oboe" } { r4 r4 r2 | R1 | R1*3 | R1 | }
    \new Staff = "vn" \with { instrumentName = "Violin" } { \tuplet 3/2 { r4 r r } r2 | R1*5 | }
  >>
}
