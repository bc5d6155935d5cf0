\version "2.24.0"
% The combiner's own voices.
<<
  \new Staff \partCombine { c''4 c'' r2 | e''4( d'') c''2 } { e'4 f' g' g' | c'4 d' r2 }
  \new Lyrics = "1" \lyricsto "one" { a b c d e }
  \new Lyrics = "2" \lyricsto "two" { f g h i j }
  \new Lyrics = "3" \lyricsto "shared" { k l m n o }
  \new Lyrics = "4" \lyricsto "solo" { p q r s t }
>>
