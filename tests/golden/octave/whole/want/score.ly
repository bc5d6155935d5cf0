% octave: --staff solo --into flute
\version "2.24.0"
\score {
  \new Staff = "solo" \with { instrumentName = "Viola" } \relative c {
    \clef alto
    c'4\mf( e g a | g e d c) | c8[ d e f] g2 | % too low from the first note to the last
  }
}
