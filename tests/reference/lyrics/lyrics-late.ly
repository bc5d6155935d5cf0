\version "2.24.0"
% The lyrics begin in the middle of a voice, before and behind it in the order of the text.
<<
  \new Staff \new Voice = "a" { c'4 d' e' f' | g' a' b' c'' }
  { \skip 2 \new Lyrics = "late" \lyricsto "a" { one two three } }
  { \skip 4*3 << \new Lyrics = "later" \lyricsto "a" { eins zwei } >> }
>>
