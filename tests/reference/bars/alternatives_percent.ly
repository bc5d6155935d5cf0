\version "2.24.0"
{ c'2 \repeat percent 2 { d'4 } \alternative { { e'4 } { f'2 } } g'1 \repeat percent 3 { a'2 } b'1 c''1 }
