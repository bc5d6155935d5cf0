\version "2.24.0"
% Set for a staff, for the score, with \with.
\score {
  <<
    \new Staff \with { melismaBusyProperties = #'() } <<
      \new Voice = "a" { c'4( d') e' ~ e' | c'( d') e' ~ e' }
    >>
    \new Lyrics \lyricsto "a" { a b c d e f g h }
    \new Staff { \set Staff.melismaBusyProperties = #'(slurMelismaBusy) \new Voice = "b" { c'4( d') e' ~ e' | c'( d') e' ~ e' } }
    \new Lyrics \lyricsto "b" { a b c d e f g h }
    \new Staff \new Voice = "c" { c'4( d') e' ~ e' | \set Score.melismaBusyProperties = #'() c'( d') e' ~ e' }
    \new Lyrics \lyricsto "c" { a b c d e f g h }
  >>
}
