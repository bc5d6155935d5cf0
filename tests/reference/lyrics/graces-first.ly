\version "2.24.0"
% Grace notes in front of everything, sung and not, here and behind the beginning of a line.
<<
  \new Voice = "a" { \grace { c'16( d' e' f' } g'1) f' << \new Voice = "b" { \grace { c''16( d'' } e''1) f'' } \new Lyrics \lyricsto "b" { x y z } >> }
  \new Lyrics \with { includeGraceNotes = ##t } \lyricsto "a" { Ah __ fa la lo }
  \new Lyrics \lyricsto "a" { Ah fa la lo }
>>
