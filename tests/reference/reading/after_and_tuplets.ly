\version "2.24.0"
{ \after 4 \f c'2 \tuplet 3/2 4 { c'8 d' e' f' g' a' } \times 2/3 { c'4 8 8 } \scaleDurations 2/3 { c'4 } \tuplet 5/4 {c'16 d' \tuplet 3/2 {e' f' g'} a' b'} }
