\version "2.24.0"
{ \repeat unfold 2 { c'4 } \alternative { { d'2 } { e'4 } } f'1 \unfoldRepeats \repeat volta 2 { c'4 } \alternative { { d'2 } { e'4 } } f'1
  \repeat unfold 2 { \repeat volta 2 { c'4 } \alternative { { d'2 } { e'4 } } } g'1 a'1 }
