\version "2.24.0"
\new Staff << { \repeat volta 2 { c''2 } \alternative { { d''4 } { e''1 } } f''1 g''1 } \\ { \repeat volta 2 { c'2 } \alternative { { d'4 } { e'1 } } f'1 g'1 } >>
