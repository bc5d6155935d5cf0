% hands: --staff Harp
\version "2.24.0"

harpRight = \relative c' {
  r8 c e g c g e c |
  \clef bass e,4 f g a |
  r2 r4 c |
}

harpLeft = \relative c' {
  \clef bass c,,1 |
  c'2 d |
  c,,4 d e r4 |
}

\score {
  \new PianoStaff \with { instrumentName = "Harp" } <<
    \new Staff \harpRight
    \new Staff \harpLeft
  >>
  \layout { }
}
