\version "2.24.0"
{ \partial 4 c'4 \repeat volta 2 { d'1 e'2. } \repeat volta 2 { f'4 g'1 a'2. } b'4 c''1 \repeat volta 2 { \partial 4 c'4 d'1 e'2. } f'1 \partial 2 g'2 a'1 b'4 \partial 4 c''4 d''1 }
