\version "2.24.0"
\score {
  \new Staff \relative {
    \repeat volta 2 { c'4 d e f } \alternative { { g4 a b c } { g2 g } }
    \repeat unfold 2 { c8 c c c } c1
  }
  \addlyrics { \repeat volta 2 { a b c d } \alternative { { e f g h } { i j } } \repeat unfold 2 { k l } m n o p }
}
