\version "2.24.0"
\markup { \score { \new Staff { c'1 } } }
\score { \new Staff { c'1 d' e' f' } }
\score { \new Staff { c''4 c'' c'' c'' } }
\score { \new Staff { g'1 a' b' d'' } }
