\version "2.24.0"
melody = { \repeat volta 2 { c'4 d'( e') f' } \alternative { { g'1 } { a'2 b' } } }
words = \lyricmode { \repeat volta 2 { a b c } \alternative { { d } { e f } } }
\score {
  \unfoldRepeats <<
    \new Voice = "a" \melody
    \new Lyrics \lyricsto "a" \words
  >>
}
\score {
  <<
    \new Voice = "a" \melody
    \new Lyrics \lyricsto "a" \words
    \new Lyrics \lyricsto "a" { \unfoldRepeats \words }
  >>
}
