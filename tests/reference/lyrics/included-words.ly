\version "2.24.0"

% Words in a file of their own, included inside \lyricmode.
words = \lyricmode { Sal -- \include "included-words.ily" o }
<<
  \new Voice = "melody" { c'4 d' e' f' g' a' b' c'' d''2 e'' }
  \new Lyrics \lyricsto "melody" \words
>>
