\version "2.24.0"
% One verse sings the notes of a slur one by one, for a while.
<<
  \new Staff \new Voice = "a" { c'4( d') e'( f') | g' ~ g' a'( b') | c'( d') e'( f') }
  \new Lyrics \lyricsto "a" { a b \set ignoreMelismata = ##t c d e \unset ignoreMelismata f g h i }
  \new Lyrics \lyricsto "a" { \set ignoreMelismata = ##t a b c \set ignoreMelismata = ##f d e f g h i }
  \new Lyrics \with { ignoreMelismata = ##t } \lyricsto "a" { a b c d e f g h i }
>>
