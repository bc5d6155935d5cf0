\version "2.24.0"
\include "music.ily"
\score {
  <<
    \new Staff = "violin" \with { instrumentName = "Violin" } << \global \violin >>
    \new Staff = "cello" \with { instrumentName = "Cello" } << \global \cello >>
    \new Voice = "singer" \singer
    \new Lyrics \lyricsto "singer" \words
  >>
}
