\version "2.24.0"

harpOneRight = \relative c {
  c8 e g c e g c e |
  \clef treble r2 e,8 g c e |
  \clef bass c,,4 e g c |
  c2 e, |
}

harpOneLeft = \relative c {
  \clef bass R1 |
  c8 e g c r2 |
  R1 |
  R1 |
}
