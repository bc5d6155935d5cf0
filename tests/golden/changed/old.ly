\version "2.24.0"
\score { <<
  \new Staff = "ob" \with { instrumentName = "Oboe 1" } \relative c'' { c4 d e f | g1 | a2 b | c1 | }
  \new Staff = "hp" \with { instrumentName = "Harp" } { <c' e'>1\p | R1 | <d' f'>1 | r1 | }
>> }
