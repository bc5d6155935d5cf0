\version "2.24.0"
lead = \relative c {
  c16\mf( d e f g a b c d e f g a b c d | % 1
  e f g a b c d e f g a b c4) |
  R1 |
  c1 |
}
\score {
  <<
    \new Staff = "glock" \with { instrumentName = "Glockenspiel" } { R1*4 }
    \new Staff = "vib" \with { instrumentName = "Vibraphone" } { R1*3 c'1 }
    \new Staff = "mar" \with { instrumentName = "Marimba" } { \clef bass R1*4 }
    \new Staff = "cel" \with { instrumentName = "Cello" } { \clef bass \lead }
  >>
}
