\version "2.24.0"
{ \repeat tremolo 4 { <c' e'>16 g'16 } \repeat tremolo 3 { c'16 d' e' } \repeat tremolo 4 <c' e'>16 c'4 \tuplet 3/2 { \repeat tremolo 2 {c'8 d'} } }
