\version "2.24.0"
% The voice goes to the other staff and takes its lyrics with it.
<<
  \new PianoStaff <<
    \new Staff = "up" \new Voice = "a" { c'4 d' \change Staff = "down" c( e) f \change Staff = "up" g'2 a'4 }
    \new Staff = "down" { c1 c1 }
  >>
  \new Lyrics \lyricsto "a" { a b c d e f g }
>>
