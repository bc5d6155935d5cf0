\version "2.24.0"
{ \repeat volta 2 { c'2 } \alternative { { \set Timing.measurePosition = #(ly:make-moment 3/4) d'4 e'4 } { \set Score.currentBarNumber = #20 f'2 g'1 } { a'2 } } b'1 c''1
  \repeat volta 2 { c'2. } \alternative { { \partial 8 d'8 } { \partial 2 e'2 f'4 } } g'1 a'1 }
