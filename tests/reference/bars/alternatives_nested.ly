\version "2.24.0"
{ \repeat volta 2 { c'2 \repeat volta 2 { d'4 } \alternative { { e'8 } { f'4. } } } \alternative { { g'2 a'4 } { b'4 c''1 } } d''1 e''2 f''1 }
