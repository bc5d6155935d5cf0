\version "2.24.0"
% The staves of one PianoStaff are one player: too wide for the lower staff alone, but the right hand is free.
\new PianoStaff \with { instrumentName = "Piano" } <<
  \new Staff = "up" {
    r1 |
    <c'' e'' g'' c'''>1 | % want: hand-span at best one hand spans a tenth, and a ninth is safe
    <c'' e'' g'' bes'' c'''>1 |
  }
  \new Staff = "down" {
    \clef bass
    <c, g, c c' e' g' c''>1 |
    <c, g, e>1 |
    <c, c>1 |
  }
>>
