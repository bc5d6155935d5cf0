% hands: --staff piano --instrument piano
\version "2.24.0"

musicRight = \relative c' {
  % a slur from hand to hand, a hairpin, a dynamic, ties, an articulation and texts
  c,8(\< e g c e g c e)\!\f | % 1
  <g e'>2~ <g d'> |
  c,,,4-. c''-> c,,^"above" c''_"below" |
}

musicLeft = \relative c' {
  % a slur from hand to hand, a hairpin, a dynamic, ties, an articulation and texts
  \clef bass R1 | % 1
  c2~ c |
  r2 r4\sustainOn r4\sustainOff |
}

\score {
  \new PianoStaff = "piano" <<
    \new Staff = "pianoRight" { \musicRight }
    \new Staff = "pianoLeft" { \musicLeft }
  >>
  \layout { }
}
