\version "2.24.0"
{ \time 2/4 c'4 \cadenzaOn d'4 \repeat volta 3 { r4 } \alternative { { \cadenzaOff d'2 s8  } { e'8 g'2. } { d'8 } } c'2 d'2 }
