% hands: --staff piano --instrument piano
\version "2.24.0"

musicRight = \relative c' {
  % a slur from hand to hand, a hairpin, a dynamic, ties, an articulation and texts
  r2\< e8( g c e)\!\f | % 1
  <g e'>2~ <g d'> |
  r4 c,-> r4 c_"below" |
}

musicLeft = \relative c' {
  % a slur from hand to hand, a hairpin, a dynamic, ties, an articulation and texts
  \clef bass c,8( e g c) r2 | % 1
  c2~ c |
  c,4-. r4 c\sustainOn^"above" r4\sustainOff |
}

\score {
  \new PianoStaff = "piano" <<
    \new Staff = "pianoRight" { \musicRight }
    \new Staff = "pianoLeft" { \musicLeft }
  >>
  \layout { }
}
