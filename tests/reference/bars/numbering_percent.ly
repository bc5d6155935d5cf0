\version "2.24.0"
{ \set Score.alternativeNumberingStyle = #'numbers
  \repeat percent 2 { c'1 } \repeat percent 2 { c'1 \repeat volta 2 { d'1 } \alternative { { e'1 } { f'1 g'1 } } a'1 } \repeat volta 2 { d'1 \volta 1 { c'1 \alternative { { e'1 } { f'1 g'1 } } } } a'1 b'1 }
