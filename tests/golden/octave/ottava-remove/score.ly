% octave: --staff fl --ottava remove --bars 2
\version "2.24.0"
\score {
  \new Staff = "fl" {
    c''4 \ottava 1 c'''' e'''' \ottava 0 r |
    \ottava #1
    c''''2 e''''
    \ottava #0
    \ottava 1 g''''1 \ottava 0 | c''1
  }
}
