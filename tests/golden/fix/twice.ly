\version "2.24.0"
riff = { c''4( d'') e''2 | }
\score {
  \new Staff \with { instrumentName = "Violin" } {
    \tempo 4 = 60
    c''1^"arco" | d''1^"pizz." | \riff c''1^"arco" | \riff
    % stavewright: allow house in this file (the old engraving)
    c''1^"pizzicato" | e''1\upbow |
  }
}
