% hands: --staff harp --instrument harp
\version "2.24.0"

% The octaves of the staff come from a \relative around it.
\relative c {
  c4 d e f
  \new PianoStaff = "harp" <<
    \new Staff = "harpRight" { r2 g8 e' c' g | e2 r | }
    \new Staff = "harpLeft" { \clef bass c,,8 g' c e r2 | <c e g c>2 r | }
  >>
  g4 a b c
}
