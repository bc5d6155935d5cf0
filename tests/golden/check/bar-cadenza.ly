\version "2.24.0"
\relative c'' {
  c4 d e f |
  \cadenzaOn
  c4 d e f g a b | c2. |
  \cadenzaOff
  \bar "|"
  c4 d e f |
}
