\version "2.24.0"
{ \repeat volta 2 { c'1 d'4 } \alternative { { \cadenzaOn e'1 e'4 \cadenzaOff } { f'2. g'1 } } a'1
  \cadenzaOn \repeat volta 2 { c'4 } \alternative { { d'4 } { e'4 f'4 } } \cadenzaOff g'2 a'1 b'1 }
