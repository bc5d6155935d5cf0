% \once is over before the bar ends.
\version "2.24.0"
\relative c' {
  c4 \once \set Score.measureLength = #(ly:make-moment 5/4) d e f | g a b c |
  \set Score.measureLength = #(ly:make-moment 2/4) c d | e f |
}
