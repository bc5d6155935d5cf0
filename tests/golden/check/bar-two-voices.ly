\version "2.24.0"
% Only the lower voice is wrong.
<<
  \new Staff <<
    \new Voice = "one" \relative c'' { \voiceOne c4 d e f | c4 d e f | c1 | }
    \new Voice = "two" \relative c' {
      \voiceTwo c4 d e f |
      c4 d e | % want: bar-length bar 2, from line 8, holds 3/4 of 4/4
      c4 d e f |
      r4 |
    }
  >>
>>
