\version "2.24.0"

% behind << \\ >> the music goes on in a voice that begins there
lower = \relative c {
  << { g''1 } \\ { c,,1 } >> |
  c4 e g c |
  << { g'1 } \\ { c,,1 } >> |
  c4 e g c |
}

global = { \tempo 4 = 60 s1*4 }

\score {
  \new Staff = "lower" << \global \lower >>
  \layout { }
}
