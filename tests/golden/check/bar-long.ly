\version "2.24.0"
\relative c'' {
  \time 3/4
  c4 d e |
  c4 d8 e f4. | % want: bar-length 1/8 behind the bar line; bar 2, from line 5, holds 7/8 of 3/4
  c4 d e |
}
