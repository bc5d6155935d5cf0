\version "2.24.0"
% Examples in texts are no scores of the piece: a bar there is as long as it is.
\markup { \score { \relative { c'4 d e | f } \layout { } } }
\relative c'' {
  c4 d e f |
  c4 d e^\markup \score { { c'4 d' e' | f' } \layout { } } | % want: bar-length bar check is 1/4 before the bar line; bar 2, from line 6, holds 3/4 of 4/4
  c4 d e f |
  c4 d e f |
}
