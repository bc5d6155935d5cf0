\version "2.24.0"
{ \time 2/4 c'4 \repeat volta 3 { r4 } \alternative { { d'2 s8 \cadenzaOn } { e'8 \cadenzaOff g'2. } { d'8 } } c'2 d'2 }
