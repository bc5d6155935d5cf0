\version "2.24.0"
% Grace notes that are sung.
<<
  \new Staff \new Voice = "a" { c'4 \grace d'8 e'4 \grace { f'16( g' } a'4) b' | c'' \appoggiatura d''8 c''4 b'2 }
  \new Lyrics \lyricsto "a" { a \set includeGraceNotes = ##t b c d e f g h i j k }
  \new Lyrics \with { includeGraceNotes = ##t } \lyricsto "a" { a b c d e f g h i j k }
  \new Lyrics \lyricsto "a" { a b c d e f g h i j k }
>>
