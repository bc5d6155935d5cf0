\version "2.24.0"
\relative c'' {
  c4 d e f |
  c4 d e | % want: bar-length bar check is 1/4 before the bar line; bar 2, from line 4, holds 3/4 of 4/4
  c4 d e f |
  c4 d e f |
}
