\version "2.24.0"
{ \set Score.alternativeNumberingStyle = #'numbers
  c'1 \repeat volta 2 { d'1 } \alternative { { e'1 \repeat volta 2 { f'1 } \alternative { { g'1 } { a'1 b'1 } } c''1 } { d''1 e''1 } } f''1 }
