\version "2.24.0"
lead = \relative c {
  c16\mf( d e f g a b c d e f g a b c d | % 1
  e f g a b c d e f g a b c4) |
  R1 |
  c1 |
  c,,2\p c''~ | c4 c'2. |
}
\score {
  <<
    \new Staff = "glock" \with { instrumentName = "Glockenspiel" } { R1*6 }
    \new Staff = "vib" \with { instrumentName = "Vibraphone" } { R1*3 c'1 R1*2 }
    \new Staff = "mar" \with { instrumentName = "Marimba" } { \clef bass R1*6 }
    \new Staff = "cel" \with { instrumentName = "Cello" } { \clef bass \lead }
  >>
}
