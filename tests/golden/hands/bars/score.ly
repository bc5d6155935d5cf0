% hands: --staff harp --bars 2-2 --instrument harp
\version "2.24.0"

harp = {
  c,8 g, c e g c' e' g' |
  c,8 g, c e g c' e' g' |
  c,8 g, c e g c' e' g' |
}

\score {
  \new Staff = "harp" \harp
  \layout { }
}
