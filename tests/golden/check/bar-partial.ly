\version "2.24.0"
\relative c'' {
  \partial 4 g4 |
  c4 d e f |
  c4 d e2 |
  \partial 8 g8 |
  c4 d e f |
}
