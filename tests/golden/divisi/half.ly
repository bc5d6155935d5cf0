\version "2.24.0"
viola = \relative c' {
  e4 f <e g>2~\p |
  <e g>8-.( <f a>4 g8) r4 <c, e g>4:32 |
  f1 | e1:32 | g2 a32 b c d e8 r4 |
  <e g>1 | <f a>1 |
}
\score { \new Staff \with { instrumentName = "Viola" } { \clef alto \viola } }
