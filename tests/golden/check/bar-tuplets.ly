\version "2.24.0"
\relative c'' {
  \tuplet 3/2 { c8 d e } \tuplet 3/2 4 { c8 d e f g a } \tuplet 5/4 { g16 f e d c } |
  \times 2/3 { c2 d e } |
  \tuplet 3/2 { c4 d e } c2 |
  \scaleDurations 2/3 { c4 d e } c2 |
  \tuplet 3/2 { c8 d e } c2 | % want: bar-length bar 5, from line 7, holds 3/4 of 4/4
}
