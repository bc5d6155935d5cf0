\version "2.24.0"
{ c'2 \alternative { { d'4 } { e'2 } } f'1 g'1 }
