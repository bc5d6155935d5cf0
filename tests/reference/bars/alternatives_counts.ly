\version "2.24.0"
{ \repeat volta 4 { c'2 } \alternative { { d'4 } { e'2 } } f'1 \repeat volta 2 { c'2 } \alternative { { d'4 } { e'4 } { f'2 } } g'1 a'1
 \repeat volta 3 { c'4 \volta 1 { d'4 } \volta 2,3 { e'2. } } f'1 g'1 }
