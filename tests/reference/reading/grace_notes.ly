\version "2.24.0"
{ \grace c'8 d'4 \grace { c'16 d' } e'4 \grace c'8 \grace d'8 f'4 \acciaccatura { a'8 } g'4 \appoggiatura b'4 a'4 \afterGrace c''2 { d''16 e'' } f'2 \afterGrace 7/8 c''2 { d''16 } \tuplet 3/2 { \grace e'8 c'8 d' e' } }
