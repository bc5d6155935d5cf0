\version "2.24.0"
violin = \relative c' { R1 | g4\downbow\p( b d g) | a,8^"pizz." b c d e2-1\f | R1 | }
flute = \relative c'' { R1*3 | c1 | }
clarinet = { \transposition bes R1*4 }
\score {
  <<
    \new Staff = "fl" \with { instrumentName = "Flute" } \flute
    \new Staff = "cl" \with { instrumentName = "Clarinet in Bb" } \clarinet
    \new Staff = "vn" \with { instrumentName = "Violin I" } \violin
  >>
}
