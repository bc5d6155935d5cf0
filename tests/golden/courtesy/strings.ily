pizz = ^\markup \italic "pizz."
arco = ^\markup \italic "arco"

vlI = \relative c'' {
  g1~ | % 1
  g1 |
  g4\pizz r g r | % 3
  e'8(\arco d c b) a4\pizz r |
  g1\arco~ |
  g4 g4\pizz r2 |
  g1\arco | % 7
  g1\fermata |
  g4\pizz r r2 |
}

vlII = \relative c'' {
  g1~ | % 1
  g1 |
  e4\pizz r e r | % 3
  r1 | r1 | r1 | r1 | r1 | r1 |
}

% They hold the same note and let go with the violins; no pizzicato follows.
vla = \relative c' {
  g'1~ | % 1
  g1 |
  d4 r d r | % 3
  r1 | r1 | r1 | r1 | r1 | r1 |
}

vc = \relative c {
  c1~ | % 1
  c1 |
  c4 r c r | % 3
  c2 c | c8\pizz r r4 c2\arco | r1 | r1 | r1 | r1 |
}

tpt = \relative c'' {
  R1*2 | c2. c4 | c1 | % 3
  c1^"con sord." | R1*2 |
  r2 c2^"open" | R1 |
}
