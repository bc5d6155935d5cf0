% octave: --staff fl --ottava add
\version "2.24.0"
\score {
  \new Staff = "fl" \relative c''' {
    c4 e g c |
    e8( g c g) e4 \acciaccatura d8 c'4 |
    c,,,4 d e f | \tuplet 3/2 { c'''8 d e } g4 r2 |
    \clef bass c,,,,,,4 d, e f,, | c'4 c c' \repeat tremolo 4 { c''''32 e } |
  }
}
