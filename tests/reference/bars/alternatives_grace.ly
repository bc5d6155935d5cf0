\version "2.24.0"
{ \repeat volta 2 { c'1 d'2 } \alternative { { e'4 \grace g'8 f'4 } { \grace a'8 b'2 c''4 } } \grace d''8 e''1 f''1 g''1 }
