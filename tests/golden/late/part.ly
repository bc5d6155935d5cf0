\version "2.24.0"
\include "music.ily"
\score { \new Staff = "cello" << \global \cello >> }
