\version "2.24.0"
\score {
  <<
    \new Staff = "fl" \with { instrumentName = "Flute" } { c''1 | R1*2^"muta in Piccolo" | R1*2 | }
    \new Staff = "ob" \with { instrumentName = "Oboe" } { R1 | R1*2 | f''4\p g'' a'' b'' | c'''1 | }
  >>
}
