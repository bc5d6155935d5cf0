\version "2.24.0"
<< { \partial 4 c'4 d'1 e'2 \partial 8 d'8 c'1 } \new Staff { \partial 8 c'4 d'1 e'2 \partial 4 d'8 c'1 } >>
