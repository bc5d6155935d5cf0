\version "2.24.0"
% What the \layout block sets for all voices.
\layout {
  \context { \Voice melismaBusyProperties = #'(tieMelismaBusy) }
}
\score {
  <<
    \new Voice = "a" { c'4( d') e' ~ e' | c'8[ d'] e' f' g'[ a' b' c''] }
    \new Lyrics \lyricsto "a" { a b c d e f g h i j k }
  >>
  \layout { \context { \Staff \autoBeamOff } \context { \Lyrics ignoreMelismata = ##t } }
}
\score {
  \new Staff \new Voice = "b" { c'4( d') e' ~ e' | c'8[ d'] e' f' g'[ a' b' c''] }
  \addlyrics { a b c d e f g h i j k }
}
