\version "2.24.0"
{ \repeat segno 2 { c'1 d'4 } \alternative { { e'2 } { f'2. } } g'1 \repeat volta 2 { a'2. } b'1 \repeat segno 2 { c'4 \alternative { \volta 1 { d'2 } \volta 2 \volta #'() { e'2. } } } f'1 g'1 }
