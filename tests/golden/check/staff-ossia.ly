\version "2.24.0"
% A staff that begins later and ends earlier, chord names and lyrics measure nothing.
<<
  \chords { c1 f }
  \new Staff = "main" \relative c'' {
    c1 |
    << { d1 | e1 | } \new Staff = "ossia" { d'1 | e'1 | } >>
    c1 |
  }
  \new Staff = "other" \relative c'' { c1 | c | c | c | }
>>
\addlyrics { la }
