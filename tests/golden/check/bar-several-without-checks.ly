\version "2.24.0"
\relative c'' {
  c4 d e f
  c4 d e f
  c4 d e | % want: bar-length the 3 bars from bar 1 on, from line 3, hold 11/4 of 3
}
