\version "2.24.0"

% behind << \\ >> the music goes on in a voice that begins there
lower = \relative c {
  << { g''1 } \\ { c,,1 } >> |
  c4 e g c |
  << { g'1 } \\ { c,,1 } >> |
  c4 e g c |
}

\score {
  \new Staff = "lower" \lower
  \layout { }
}
