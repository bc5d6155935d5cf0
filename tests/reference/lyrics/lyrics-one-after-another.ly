\version "2.24.0"
% One line, two runs of lyrics: the second waits for the end of the first, which takes one note more.
<<
  \new Staff \new Voice = "a" { c'4 d' e' f' | g' a' b' c'' | d'' e'' f'' g'' }
  \new Lyrics { \lyricsto "a" { one two } \lyricsto "a" { three four } \lyricsto "a" { five } }
>>
