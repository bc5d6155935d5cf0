\version "2.24.0"
\relative c'' {
  \repeat volta 2 {
    c4 d e f |
    c4 d e f |
  }
  \alternative {
    { c1 | }
    { d1 | }
  }
  \repeat unfold 3 { c4 d e f | }
  \repeat percent 2 { c4 d e f | }
  \repeat tremolo 8 { c16 e } |
}
