\version "2.24.0"
\score {
  <<
    \new Staff = "flute" \with { instrumentName = "Flute" } \relative c'' {
      \key g \major
      \time 3/4
      \tempo "Andante" 4 = 80
      c4 d8( e) f4 | <g b>2. | \tuplet 3/2 { r8 c d } e2^"è" |
    }
    \new DrumStaff \drummode { bd4 sn r | R2. | hh2.:32 | }
  >>
  \layout { }
}
