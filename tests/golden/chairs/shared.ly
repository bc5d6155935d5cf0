\version "2.24.0"
% Two players on a staff: the second one changes, and each has notes of its own.
\score {
  <<
    \new Staff \with { instrumentName = "Flutes 1, 2" } {
      \tempo 4 = 60
      <c'' e''>1^"2. muta in Picc." | R1*2 |
      << { c'''1 } \\ { g''1 } >> | % 4: eight seconds for the second
      << { c'''1 } \\ { g''2^"2. muta in Fl." r4 g''4 } >> | % 5: a second for the change
      c'''1^"1." | <c''' e'''>1 | <c''' e'''>1^"a 2" | <c''' e''' g'''>1 |
    }
    \new Staff \with { instrumentName = "Horns 1, 2" } {
      <c' e'>1^"con sord." | <c' e'>1^"senza sord." | c'1^"1. solo" | << c'1 \\ e'1 >> | R1 | R1*4 |
    }
    \new Staff \with { instrumentName = "Vl. 1" } { <g d' a' e''>1 | <g d' a' e'' a'' d''' g'''>1 | R1*7 | }
    \new Staff \with { instrumentName = "Oboe" } { <c'' e''>1 | R1*8 | }
    \new Staff \with { instrumentName = "Trumpet" } { c''1^"cup mute" | c''1^"con sord." | c''1^"open" | R1*6 | }
  >>
}
