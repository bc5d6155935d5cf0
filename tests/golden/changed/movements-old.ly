\version "2.24.0"
\score { \new Staff { c'1 d' e' f' } }
\score { \new Staff { g'1 a' b' c'' } }
\score { \new Staff { e''1 d'' c'' b' } }
