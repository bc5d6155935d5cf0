\version "2.24.0"
% A line that stands before its voice takes none of its notes.
<<
  \new Lyrics = "above" \lyricsto "a" { one two three }
  \new Staff \new Voice = "a" { c'4 d' e' f' }
  \new Lyrics = "below" \lyricsto "a" { one two three }
>>
