% hands: --staff Harp
\version "2.24.0"

% A glissando begins and ends in one hand.
harpRight = {
  R1 |
  r4 r8 c' g' e'' c'' g' |
}

harpLeft = {
  \clef bass <c g>4\arpeggio c\glissando \clef treble c'''2 |
  \clef bass c,8 g, e r8 r2 |
}

\score {
  \new PianoStaff \with { instrumentName = "Harp" } <<
    \new Staff \harpRight
    \new Staff \harpLeft
  >>
  \layout { }
}
