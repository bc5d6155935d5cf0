% hands: --staff harp1 --instrument harp --bars 2-2
\version "2.24.0"
\include "harp.ily"

\score {
  \new PianoStaff = "harp1" <<
    \new Staff = "harp1Right" { \clef bass \harpOneRight }
    \new Staff = "harp1Left" { \harpOneLeft }
  >>
  \layout { }
}
