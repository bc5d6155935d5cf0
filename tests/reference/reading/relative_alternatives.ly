\version "2.24.0"
\relative c' { \repeat volta 2 { c e } \alternative { { g c } { g c } } c }
