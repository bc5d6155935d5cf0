% octave: --staff melody --between "c' g'''" --fold
\version "2.24.0"
melody = \relative c'' {
  \time 4/4
  g4( c b a | g2) r4 e'8( d | % 1-2
  c8 b a g a b c4) | r4 c4 e d | % the run goes up as a whole, to the rest
  c4. b8 a4 g | e f g2 | % nothing moves here
}
\score { \new Staff = "melody" \melody }
