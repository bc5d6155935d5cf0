% hands: --staff Harp
\version "2.24.0"

harpRight = \relative c' {
  r8 c e g c g e c |
  R1 |
  R1 |
}

harpLeft = \relative c' {
  \clef bass c,,1 |
  << { e'4 f g a } \\ { c,2 d } >> |
  c,,4 d e c''' |
}

\score {
  \new PianoStaff \with { instrumentName = "Harp" } <<
    \new Staff \harpRight
    \new Staff \harpLeft
  >>
  \layout { }
}
