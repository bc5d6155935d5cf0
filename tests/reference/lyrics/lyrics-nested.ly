\version "2.24.0"
% Divided lyrics: both lines go by the notes of one voice.
<<
  \new Voice = "a" { c'4 d' e' f' | g' a' b' c'' }
  \new Lyrics \lyricsto "a" {
    one two
    << { three four } \new Lyrics = "other" { drei vier } >>
    five
    << { a8 b a } { c4 d } >> six
  }
>>
