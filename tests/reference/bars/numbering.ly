\version "2.24.0"
{ \set Score.alternativeNumberingStyle = #'numbers
  c'1 \repeat volta 2 { d'1 e'2 } \alternative { { f'2 g'1 } { a'2 b'1 c''1 } } d''1 e''1
  \set Score.alternativeNumberingStyle = #'numbers-with-letters \repeat volta 3 { d'1 } \alternative { { f'1 g'2 } { a'1 } { b'1 c''1 } } d''1 e''1 }
