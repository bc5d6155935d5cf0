\version "2.24.0"
\score {
  <<
    \new Staff = "vn" \with { instrumentName = "Violin I" } { g'4\open a'\stopped d''^"sul D" e''-- | c''2^"IV corda" b'\open | }
    \new Staff = "va" \with { instrumentName = "Viola" } { \clef alto R1*2 | }
    \new Staff = "hn" \with { instrumentName = "Horn in F" } { \transposition f R1*2 | }
  >>
}
