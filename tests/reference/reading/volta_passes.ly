\version "2.24.0"
music = \fixed c' {
  \repeat volta 2 {
    c1
    << \volta #'() { s1 d4 } \volta 1 { f4 f f f } \volta 2 { \unfolded { g1 } } >>
  }
  \repeat volta 3 c1 \alternative { \volta 1 d \volta 3,2 f }
  \repeat volta 2 { e4 \alternative { f g a } }
  \repeat segno 2 { g1 \volta 1 a1 }
}
\score { \music }
\score { \unfoldRepeats \music }
\score { \fixed c' { \repeat unfold 2 { \repeat unfold 3 { f4 << \volta 1 g \volta 2 a \volta 3 b >> } } } }
\score { \fixed c' { \repeat unfold 2 { \repeat volta 3 { << \volta 1,2 d1 \volta 3 f >> } } } }
