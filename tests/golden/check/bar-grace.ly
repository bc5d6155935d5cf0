\version "2.24.0"
\relative c'' {
  c4 d e f |
  \grace { g16 a } c,4 \appoggiatura d8 e4 f \afterGrace g { a16 g } |
  \acciaccatura g8 c,1 |
}
