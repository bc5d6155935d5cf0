\version "2.24.0"
\score { \new Staff = "fl" \with { instrumentName = "Flute" } { c'''1 | R1*2^"muta in Piccolo" | c'''4 d''' e''' f''' | } }
