\version "2.24.0"
% Variables with points in their names.
violin.1 = { c'4 d' e' f' }
violin.2 = { g'4 a' b' c'' }
flute.low = { c'2 d' }
\score { << \new Staff { \violin.1 } \new Staff { \violin.2 c'1 } \new Staff { \flute.low e'1 } >> }
