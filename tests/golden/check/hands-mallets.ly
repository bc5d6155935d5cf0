\version "2.24.0"
<<
  \new Staff \with { instrumentName = "Vibraphone" } {
    <g b d' g'>2 <g b e' g'> |
    <g' b' d'' g'' b''>1 | % want: hand-span two hands have 4 mallets; leave out 1 or share
  }
  \new Staff \with { instrumentName = "Marimba" } {
    <c' c'' e'' e'''>1 |
    <c e' g' b''>1 | % want: hand-span at best one hand spans a tenth, and an octave is safe
  }
>>
