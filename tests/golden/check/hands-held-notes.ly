\version "2.24.0"
% Notes that go on from before are not struck: ties, a pedal point, a bass under the right hand's chords.
\new PianoStaff \with { instrumentName = "Piano" } <<
  \new Staff = "up" { <c'' e'' g'' c'''>2~ <c'' e'' g'' c'''>4 <f''' a''' c''''> | }
  \new Staff = "down" { \clef bass << { r4 <g c' e'>4 q q } \\ { c,1 } >> | }
>>
