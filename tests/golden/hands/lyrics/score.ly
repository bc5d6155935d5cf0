% hands: --staff p --instrument piano
\version "2.24.0"

% The syllables behind the variable stay as they are written.
tune = { c,4 g, c' e' g'1 }
words = \lyricmode { up and a -- way }
\score {
  <<
    \new Staff = "p" \new Voice = "tune" \tune
    \new Lyrics \lyricsto "tune" \words
  >>
  \layout { }
}
