\version "2.24.0"
\score {
  <<
    \new Staff \with { instrumentName = "Flutes 1, 2" } { c''1 | R1^"2. muta in Piccolo" }
    \new Staff \with { instrumentName = "Oboi" } { <c'' e''>1 | R1^"to Cor anglais" }
    \new Staff \with { instrumentName = "Xylophone" } { c''1 | \set Staff.instrumentName = "Marimba" R1 }
  >>
}
