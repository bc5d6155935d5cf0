\version "2.24.0"
% Syllables with durations of their own; the inherited one runs on.
<<
  \new Staff { c'1 d'1 }
  \new Lyrics \lyricmode { I2 like4. my8 | cat!1 }
  \new Lyrics = "low" \lyricmode { a4 -- b \skip 4 c2*1/2 "two words"4 _ d e8. __ }
  \new Lyrics { \lyricmode { x2 y } }
>>
