\version "2.24.0"
% The lyrics belong to the variable's music.
melody = \relative { c''4 d e f } \addlyrics { one two three four }
words = \lyricmode { five six se -- ven }
<<
  \new Staff \melody
  \new Staff { g'4 a' b' c'' } \addlyrics \words
>>
{ \melody }
