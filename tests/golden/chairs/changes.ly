\version "2.24.0"
% A whole bar lasts four seconds.
\score {
  <<
    \new Staff \with { instrumentName = "Flute 2" } {
      \tempo 4 = 60
      c''1^"muta in Piccolo" | R1 | c''1 | % 3: 4 s, wants 5
      R1^"muta in Flauto" | R1 | c''1 | % 6: 8 s are enough
      c''2. r4^"to Picc." | c''1 | % 8: 1 s
      \set Staff.instrumentName = "Flute" c''1 | % 9: none
      r1^"to Coda" | r1^"to alto flute" | c''1 | % 12: not booked
    }
    \new Staff \with { instrumentName = "Oboe" } { c''1 | R1*9 | c''1 | R1 | }
    \new Staff \with { instrumentName = "English horn" } { R1 | c''2 r2 | R1*8 | c''1 | R1 | }
    \new Staff \with { instrumentName = "Clarinet 1 in A" } { c''1^\markup { muta in B\flat } | R1 | c''1 | R1*9 | }
    \new Staff \with { instrumentName = "Horn 1 in F" } { c'1^"muta in D" | c'1 | R1*10 | }
  >>
}
