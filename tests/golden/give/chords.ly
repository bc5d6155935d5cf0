\version "2.24.0"
\score {
  <<
    \new Staff = "vn" \with { instrumentName = "Violin I" } { g'4 <a' c''> <b' d''>2 | }
    \new Staff = "cl1" \with { instrumentName = "Clarinet 1" } { \transposition bes R1 | }
    \new Staff = "cl" \with { instrumentName = "Clarinets 1.2" } { \transposition bes R1 | }
  >>
}
