\version "2.24.0"
% A voice of the same name comes again: directly behind the first, and after a pause.
<<
  \new Staff { \new Voice = "x" { c'4 d' } \new Voice = "x" { e'4 f' g' a' } r2 \new Voice = "x" { b'4 c'' d'' e'' f'' g'' } }
  \new Lyrics \lyricsto "x" { a b c d e f g h i j k }
>>
