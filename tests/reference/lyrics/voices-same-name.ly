\version "2.24.0"
% Two voices of one name in two staves: the newer one counts.
<<
  \new Staff \new Voice = "v" { c'4 d' e' f' }
  \new Staff \new Voice = "v" { r4 d'2 e'4 }
  \new Lyrics \lyricsto "v" { a b c d }
>>
