\version "2.24.0"
% The second mistake changes the amount; the third bar check is off by the same amount again.
\relative c'' {
  c4 d e f |
  c4 d e | % want: bar-length bar 2, from line 5, holds 3/4 of 4/4
  c4 d e f |
  c4 d e f8 | % want: bar-length 1/8 before the bar line
  c4 d e f |
}
