% hands: --staff Harp
\version "2.24.0"

% A hairpin that is ended by the next one stays, too.
harpRight = {
  r4 r8 r8\> g c' e' g'\! |
  r2\< g'8 c'' e'' g''\f |
}

harpLeft = {
  \clef bass c,8^\< g, c e r2 |
  c,8^\p g, c e r2 |
}

\score {
  \new PianoStaff \with { instrumentName = "Harp" } <<
    \new Staff \harpRight
    \new Staff \harpLeft
  >>
  \layout { }
}
