\version "2.24.0"
\relative c'' {
  R1*3 |
  \time 5/8
  R1*5/8*2 |
  \time 12/8
  R1. |
  c4. d e f |
}
