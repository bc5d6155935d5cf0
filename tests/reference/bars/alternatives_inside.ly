\version "2.24.0"
{ \repeat volta 2 { c'1 d'2. \alternative { \volta 1 { e'4 } \volta 2 { f'2 g'2. } } } a'1 b'1
  \repeat volta 4 { c'2 \alternative { \volta 1,3 { d'4 } \volta 2 { e'2 } \volta 4 { f'1 } } } g'1 a'4 b'4 }
