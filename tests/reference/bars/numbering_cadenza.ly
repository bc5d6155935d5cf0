\version "2.24.0"
{ \time 2/4 \set Score.alternativeNumberingStyle = #'numbers c'4 \cadenzaOn d'4 \repeat volta 3 { r4 } \alternative { { \cadenzaOff d'2 s8  } { e'8 g'2. } { d'8 } } c'2 d'2 \repeat volta 3 { c'2 } \alternative { { d'2 } { e'2 } { \cadenzaOn f'2 f'2 } } \cadenzaOff g'2 
  \repeat volta 3 { c'2 } \alternative { { d'2 \cadenzaOn } { e'2  } { \cadenzaOff f'2 f'2 } } g'2 }
