\version "2.24.0"
\relative c' { c4 \repeat unfold 2 { g' c } \alternative { { e } { f, } } c }
