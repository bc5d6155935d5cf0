\version "2.24.0"
\score {
  <<
    \new Staff = "a" { <c' e'~>8. <c' e'~>16 <c' e'~>4. e'8 f'4 | <d' f'^~ a'~>2 <d'~>4 d' | }
    \new Staff = "b" { r8 r4. r2 | R1 | }
  >>
}
