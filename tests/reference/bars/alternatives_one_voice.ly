\version "2.24.0"
<< \new Staff { c'1 \repeat volta 2 { d'2 } \alternative { { f'2 g'4 } { a'2 b'1 } } c''1 d''1 }
   \new Staff { \repeat unfold 24 { c4 } } >>
