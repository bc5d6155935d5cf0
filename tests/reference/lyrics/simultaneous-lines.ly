\version "2.24.0"
% Two runs of lyrics for one line, for two voices, behind words with durations of their own.
<<
  \new Staff << \new Voice = "a" { r1 c''4 d'' r2 | e''4 f'' } \new Voice = "b" { r1 r2 c'4 d' | r2 } >>
  \new Lyrics = "l" \lyricmode { own4 time \skip 1*2 }
  \context Lyrics = "l" << \lyricsto "a" { a b c d } \lyricsto "b" { e f g } >>
>>
