\version "2.24.0"
flutes = {
  c''1 | <c''~ e''>2 c''4 d'' | % 1
  <c'' e''~>2 e''~ | e''4 r f''2 | % 3
  g''2^"1." <c'' e''> | g''1 | % 5
  g''2^"a 2" <c'' e''> | g''1 | % 7
}
horns = { <c' e' g'~>2 g' | <c' e'~ g'~>2 <e' g'> | <c' e'~ g'>2 e' | c'1 | R1*5 }
\score {
  <<
    \new Staff \with { instrumentName = "Flutes 1.2" } \flutes
    \new Staff \with { instrumentName = "Horns 2.3.4" } \horns
  >>
}
