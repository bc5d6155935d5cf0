\version "2.24.0"
<< \new Staff { \repeat volta 2 { d'2 } \alternative { { f'2 g'4 } { a'2 b'1 } } c''1 d''1 }
   \new Staff { \repeat volta 2 { d2 e4 } \alternative { { f4 g2 } { a1 b4 } } c'1 d'1 } >>
