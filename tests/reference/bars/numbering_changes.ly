\version "2.24.0"
{ c'1 \repeat volta 3 { d'1 } \alternative { { e'1 f'1 } { \set Score.alternativeNumberingStyle = #'numbers e'1 f'1 } { g'1 a'1 }  } b'1
  \repeat volta 3 { d'1 } \alternative { { e'1 f'1 } { \unset Score.alternativeNumberingStyle e'1 f'1 } { g'1 a'1 }  } b'1 
  \set Score.alternativeNumberingStyle = #'numbers \repeat volta 2 { d'1 } \alternative { { e'2 \set Score.currentBarNumber = #40 e'2 f'1 } { e'1 f'1 } } g'1 }
