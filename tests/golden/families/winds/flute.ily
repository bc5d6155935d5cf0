flute = \relative c'' {
  c4 d e f | % 1
  g2 a | % 2
}
