% hands: --staff harp --bars 2-3 --instrument harp
\version "2.24.0"

% Outside of the bars that are split the upper staff keeps its clefs, and gets back the one that it had.
harp = {
  \clef bass c,8 g, c e g e c g, |
  c,8 g, c e g c' \clef treble e' g' |
  c''8 g' e' c' \clef bass g e c g, |
  d,8 a, d f \clef alto a c' d' f' |
}

\score {
  \new Staff = "harp" \harp
  \layout { }
}
