\version "2.24.0"
viola = \relative c' {
  \time 4/4
  e4 f <e g>2~\p | % 1
  <e g>8-.( <f a>4 g8) r4 <c, e g>4 | % 2
  f1 | % 3
  \tuplet 3/2 { <e g>4 <f a> <g b> } <g b>2\f\> | % 4
  a4\! r r2 | % 5
  <f a>4-> <e g> <f a>2 | % 6
  <d f a>1\fermata \bar "|." % 7
}
cello = { c1 | d1 | <c g>2~ <c g>4~ g4 | R1*4 }
\score {
  <<
    \new Staff \with { instrumentName = "Viola" } { \clef alto \viola }
    \new Staff \with { instrumentName = "Cello" } { \clef bass \cello }
  >>
}
