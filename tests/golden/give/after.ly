\version "2.24.0"
\score {
  <<
    \new Staff = "ob" \with { instrumentName = "Oboe" } { \afterGrace c''2 { d''16( e'' } f''2) | }
    \new Staff = "fl" \with { instrumentName = "Flute" } { R1 | }
    \new Staff = "vn" \with { instrumentName = "Violin" } { <c'-1 e'-. g'-3>2 <d'\harmonic f'>-> | }
    \new Staff = "vn2" \with { instrumentName = "Violin II" } { R1 | }
  >>
}
