\version "2.24.0"
global = { \time 4/4 s1*2 | \mark \default s1*3 | }
violin = \relative c'' {
  c4( d e f) | % 1
  g2\< a( | % 2
  b2) c | % 3
  d1\f ~ | % 4
  d4 c b a | % 5
}
cello = \relative c {
  \clef bass c1 | % 1
  \clef tenor g'1 ~ | % 2
  g1 | % 3
  \clef bass c,2 d | % 4
  R1 | % 5
}
singer = \relative c' { c1 | d2 e | f g | a1 | b | }
words = \lyricmode { Far off the lan -- terns burn __ low }
