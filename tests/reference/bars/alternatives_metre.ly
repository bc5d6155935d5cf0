\version "2.24.0"
{ \repeat volta 2 { c'1 } \alternative { { \time 3/4 d'2. e'2. f'2 } { g'1 a'2 } } b'1 c''1
  \repeat volta 2 { \time 6/8 c'2. d'4. } \alternative { { \time 2/4 e'4. } { f'4. g'2. } } a'2. b'2. }
