\version "2.24.0"
\relative c'' {
  \set Score.ignoreBarChecks = ##t
  c4 d e |
  c4 d e f g |
}
