\version "2.24.0"
% associatedVoice sets how they look; the durations count.
<<
  \new Voice = "one" { c'4 d' e' f' }
  \new Lyrics \lyricmode { \set associatedVoice = "one" a2 b4 c }
>>
