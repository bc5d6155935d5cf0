\version "2.24.0"
<<
  \new Staff \with { instrumentName = "Vibraphone" } {
    <g b d' g'>2 <g b e' g'> |
    <g' b' d'' g'' b''>1 | % want: hand-span two hands with 2 mallets each strike 4 at once
  }
  \new Staff \with { instrumentName = "Marimba" } {
    <c' c'' e'' e'''>1 |
    <c e' g' b''>1 | % want: hand-span one has to span a tenth; an octave is safe
  }
>>
