% hands: --staff p --instrument piano
\version "2.24.0"

% The syllables behind the variable stay as they are written.
tuneRight = { r2 c'4 e' g'1 }

tuneLeft = { \clef bass c,4 g, r2 R1 }
words = \lyricmode { up and a -- way }
\score {
  <<
    \new PianoStaff = "p" <<
      \new Staff = "pRight" \new Voice = "tune" \tuneRight
      \new Staff = "pLeft" \new Voice = "tune" \tuneLeft
    >>
    \new Lyrics \lyricsto "tune" \words
  >>
  \layout { }
}
