\version "2.24.0"
% A second mistake makes good for the first; a later one by the same amount is a new one.
\relative c'' {
  c4 d e | % want: bar-length bar 1, from line 4, holds 3/4
  c4 d e f g |
  c4 d e f |
  c4 d e | % want: bar-length bar 4, from line 7, holds 3/4
  c4 d e f |
}
