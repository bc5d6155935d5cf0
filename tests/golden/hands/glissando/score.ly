% hands: --staff Harp
\version "2.24.0"

% A glissando begins and ends in one hand.
harp = {
  \clef bass <c g>4\arpeggio c\glissando \clef treble c'''2 |
  \clef bass c,8 g, e c' \clef treble g' e'' c'' g' |
}

\score {
  \new Staff \with { instrumentName = "Harp" } \harp
  \layout { }
}
