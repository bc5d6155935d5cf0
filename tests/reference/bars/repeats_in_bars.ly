\version "2.24.0"
{ c'1 \repeat volta 2 { d'2 } e'2 \repeat volta 2 { f'4 g'4 \bar "||" a'4 } b'1 \bar "|." c''2 \bar "" d''2 e''1 f''4 }
