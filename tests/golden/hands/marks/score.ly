% hands: --staff piano --instrument piano
\version "2.24.0"

music = \relative c' {
  % a slur from hand to hand, a hairpin, a dynamic, ties, an articulation and texts
  c,8(\< e g c e g c e)\!\f | % 1
  <c, g'' e'>2~ <c g'' d'> |
  c,4-. c''-> c,,\sustainOn^"above" c''_"below"\sustainOff |
}

\score {
  \new Staff = "piano" { \clef treble \music }
  \layout { }
}
