\version "2.24.0"
{ \set Score.currentBarNumber = #5 \time 2/4 \partial 8 c'8 d'2 e'2 \time 3/4 f'2 \time 2/4 g'2 a'2 }
