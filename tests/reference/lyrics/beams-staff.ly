\version "2.24.0"
% \autoBeamOff for a staff, in \with, in a variable; beams on grace notes.
global = { \autoBeamOff \time 4/4 }
<<
  \new Staff \with { \autoBeamOff } \new Voice = "a" { c'8[ d'] e' f' g'[ a' b' c''] }
  \new Lyrics \lyricsto "a" { a b c d e f g h }
  \new Staff << \global \new Voice = "b" { c'8[ d'] e' f' g'[ a' b' c''] } >>
  \new Lyrics \lyricsto "b" { a b c d e f g h }
  \new Staff \new Voice = "c" << \global { c'8[ d'] \grace { e'16[ f'] } e'8 f' g'[ \grace { d'16[ e'] } a'] b' c'' } >>
  \new Lyrics \lyricsto "c" { a b c d e f g h }
  \new Staff { \set Staff.autoBeaming = ##f \new Voice = "d" { c'8[ d'] e' f' g'[ a' b' c''] } }
  \new Lyrics \lyricsto "d" { a b c d e f g h }
  \new Staff \with { autoBeaming = ##f } \new Voice = "e" { c'8[ d'] e' f' \autoBeamOn g'[ a' b' c''] }
  \new Lyrics \lyricsto "e" { a b c d e f g h }
>>
