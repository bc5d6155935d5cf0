% hands: --staff harp1 --instrument harp --bars 2-2
\version "2.24.0"
\include "harp.ily"

\score {
  \new Staff = "harp1" { \clef bass \harpOne }
  \layout { }
}
