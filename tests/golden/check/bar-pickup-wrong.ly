\version "2.24.0"
\relative c'' {
  \partial 4 g8 | % want: bar-length 1/8 before the bar line; the pick-up, from line 3, holds 1/8 of 1/4
  c4 d e f |
}
