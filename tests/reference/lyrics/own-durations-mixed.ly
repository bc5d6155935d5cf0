\version "2.24.0"
% \lyrics is short for \new Lyrics \lyricmode; tuplets and repeats in lyrics.
<<
  \new Staff { c'1 d'1 e' }
  \lyrics { one4 two three2 }
  \new Lyrics \lyricmode { \tuplet 3/2 { a4 b c } d2 \repeat unfold 2 { la4 lo } }
  \lyrics { \repeat volta 2 { x2 } \alternative { { y4 z } { w2 } } }
>>
