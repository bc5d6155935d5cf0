\version "2.24.0"
\score { \new Staff { c1 } }
