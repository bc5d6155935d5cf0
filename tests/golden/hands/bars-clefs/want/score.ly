% hands: --staff harp --bars 2-3 --instrument harp
\version "2.24.0"

% Outside of the bars that are split the upper staff keeps its clefs, and gets back the one that it had.
harpRight = {
  \clef bass c,8 g, c e g e c g, |
  \clef treble r2 r4 e'8 g' |
  c''8 g' e' c' r2 |
  \clef bass d,8 a, d f \clef alto a c' d' f' |
}

harpLeft = {
  \clef bass R1 |
  c,8 g, c e g c' r4 |
  r2 g8 e c g, |
  R1 |
}

\score {
  \new PianoStaff = "harp" <<
    \new Staff = "harpRight" \harpRight
    \new Staff = "harpLeft" \harpLeft
  >>
  \layout { }
}
