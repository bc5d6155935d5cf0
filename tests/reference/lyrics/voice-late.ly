\version "2.24.0"
% The voice begins later than the lyrics and ends early.
\new Staff <<
  { \voiceTwo c'1 | c'1 | c'1 }
  { s1 \new Voice = "late" { d'4 e' f' g' } s2 }
  \new Lyrics \lyricsto "late" { a b c d e f }
>>
