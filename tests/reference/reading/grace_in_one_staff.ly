\version "2.24.0"
<< \new Staff { \grace c'8 d'1 } \new Staff { e'1 } >>
