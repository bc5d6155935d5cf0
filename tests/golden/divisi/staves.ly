\version "2.24.0"
cello = {
  \clef bass \key g \major
  c4\p^"arco" d <c g>2~\< | <c g>4\! g2.~ | g2 <e g b>4-. r \bar "|." % 3
}
\score { << \new Staff \with { instrumentName = "Cello" } \cello >> }
