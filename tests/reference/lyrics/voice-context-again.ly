\version "2.24.0"
% \context goes back to the voice as long as it lives.
<<
  \new Staff <<
    \new Voice = "x" { c'4 d' e' f' }
    { s2 \context Voice = "x" { g'8 a' b' c'' } \context Voice = "x" { d''4 e'' } r2 \context Voice = "x" { f'4 g' a' b' c'' } }
  >>
  \new Lyrics \lyricsto "x" { a b c d e f g h i j k l }
>>
