% hands: --staff harp --bars 2-2 --instrument harp
\version "2.24.0"

harpRight = {
  c,8 g, c e g c' e' g' |
  r2 g8 c' e' g' |
  c,8 g, c e g c' e' g' |
}

harpLeft = {
  \clef bass R1 |
  c,8 g, c e r2 |
  R1 |
}

\score {
  \new PianoStaff = "harp" <<
    \new Staff = "harpRight" \harpRight
    \new Staff = "harpLeft" \harpLeft
  >>
  \layout { }
}
