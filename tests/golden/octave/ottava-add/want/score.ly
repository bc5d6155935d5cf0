% octave: --staff fl --ottava add
\version "2.24.0"
\score {
  \new Staff = "fl" \relative c''' {
    c4 e g \ottava 2 c |
    e8( g c g) e4 \acciaccatura d8 c'4 \ottava 0 |
    c,,,4 d e f | \tuplet 3/2 { \ottava 2 c'''8 d e } g4 \ottava 0 r2 |
    \clef bass c,,,,,,4 d, e \ottava -1 f,, | c'4 c \ottava 0 c' \ottava 2 \repeat tremolo 4 { c''''32 e } \ottava 0 |
  }
}
