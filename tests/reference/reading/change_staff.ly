\version "2.24.0"
\new PianoStaff << \new Staff = "up" { c'4 \change Staff = "down" d' \change Staff = "up" e' } \new Staff = "down" { s2. } >>
