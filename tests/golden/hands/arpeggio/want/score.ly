% hands: --staff harp
\version "2.24.0"

global = { \time 4/4 \key c \major }

harpRight = \relative c {
  r4 g'16 c e g r16 g e c r4 | % 1
  r2 c'4 r |
  R1 | % 3
}

harpLeft = \relative c {
  \clef bass c,16^\p g' c e r4 c''16 r16 r8 g,16 e c g | % 1
  R1 |
  R1 | % 3
}

\score {
  \new PianoStaff = "harp" \with { instrumentName = "Harp" } <<
    \new Staff = "harpRight" << \global \harpRight >>
    \new Staff = "harpLeft" << \global \harpLeft >>
  >>
  \layout { }
}
