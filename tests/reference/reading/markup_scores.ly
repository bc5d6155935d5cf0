\version "2.24.0"
small = \markup { \score { { g'2 a' } } }
\markup { \score { \new Staff { c'1 d } \layout {} } a }
{ c'2 d'4^\markup \score { { d'8 e' } } f' }
{ e'4^\small f'4_\small }
\book { \markup \score { { f'4 } } \score { { g'4 } } }
