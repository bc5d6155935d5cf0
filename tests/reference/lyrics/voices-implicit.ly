\version "2.24.0"
% A melody without a voice of its own: the name of a staff is no voice.
<<
  \new Staff = "s" { c'4 d' e' f' }
  \new Lyrics \lyricsto "s" { a b c }
  \new Staff { \new Voice = "t" { c'4 d' e' f' } }
  \new Lyrics \lyricsto "t" { a b c }
>>
