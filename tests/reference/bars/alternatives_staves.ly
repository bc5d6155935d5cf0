\version "2.24.0"
<< \new Staff { \partial 4 c'4 \repeat volta 2 { d'1 e'2. } \alternative { { f'4 g'2. } { a'4 b'1 } } c''1 d''1 }
   \new Staff { \partial 4 c4 \repeat volta 2 { d1 e2. } \alternative { { f4 g2. } { a4 b1 } } c'1 d'1 } >>
