% hands: --staff harp --instrument harp
\version "2.24.0"

% The octaves of the staff come from a \relative around it.
\relative c {
  c4 d e f
  \new Staff = "harp" { c,8 g' c e g e' c' g | <c,, e g c e>2 r | }
  g4 a b c
}
