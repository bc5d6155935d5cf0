% hands: --staff \harp --instrument Harp
\version "2.24.0"

% other.ly has a variable of this name, too, but nothing in common with this file.
harpRight = { r2 g'8 e'' c'' g' | }

harpLeft = { \clef bass c,8 g, e c' r2 | }

\new PianoStaff <<
  \new Staff \harpRight
  \new Staff \harpLeft
>>
