% hands: --staff Harp
\version "2.24.0"

% A hairpin that is ended by the next one stays, too.
harp = {
  \clef bass c,8\< g, c e\> g c' e' g'\! |
  c,8\p\< g, c e \clef treble g' c'' e'' g''\f |
}

\score {
  \new Staff \with { instrumentName = "Harp" } \harp
  \layout { }
}
