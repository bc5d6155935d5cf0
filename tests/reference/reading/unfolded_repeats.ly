\version "2.24.0"
{ \repeat unfold 4 { c'4 } \alternative { { d'4 } { e'4 } } \repeat unfold 3 { c'4 \alternative { \volta 1,2 { d'4 } \volta 3 { e'4 } } } \repeat volta 2 {f'1} \alternative {{g'1}{a'1}} }
