\version "2.24.0"
% \change to what is no staff changes nothing.
<< \new Staff = "up" { c'4 \change Staff = "down" d' \change Score = "up" e' } \new Staff = "down" { s2. } >>
