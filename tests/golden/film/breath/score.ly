\version "2.24.0"
\score {
  <<
    \new Staff \with { instrumentName = "Flute" } {
      \tempo 4 = 60
      c''1\mf~ | c''1~ | c''1~ | c''1 |
      \tempo 4 = 150
      c''16 c''16 c''16 c''16 c''16 c''16 c''16 c''16 c''16 c''16 c''16 c''16 c''16 c''16 c''16 c''16 |
    }
    \new Staff \with { instrumentName = "Oboe" } { c''4\mf^"al niente" r2. | R1*4 | }
    \new Staff \with { instrumentName = "Trombone" } { \clef bass c1\ff~ | c1~ | c2 r | R1*2 | }
  >>
}
