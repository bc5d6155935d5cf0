\version "2.24.0"
% An empty name is any voice's; two melodies without voices beside each other.
<<
  { c''4 d''( e'') f'' }
  \new Lyrics \lyricsto "" { one two three }
>>
<<
  \relative { c''4 d~ d e } \addlyrics { a b c d }
  \relative { r4 c'8( d) e4 f } \addlyrics { k l m n }
>>
