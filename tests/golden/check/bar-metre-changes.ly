\version "2.24.0"
% Changes of metre, one of them in another staff, and a measure length set by hand.
<<
  \new Staff \relative c'' {
    \time 4/4 c4 d e f |
    \time 3/4 c4 d e |
    \time 7/8 c4 d e8 f g |
    \set Timing.measureLength = #(ly:make-moment 5/4)
    c4 d e f g |
  }
  \new Staff \relative c' {
    c4 d e f |
    c4 d e |
    c4 d e8 f g |
    c,4 d e f g |
  }
>>
