% Natural horns in high keys go up to their twelfth partial: a warning, an error only above it.
\version "2.24.0"
\score {
  \new Staff \with { instrumentName = "Corni in C alto" } {
    \transposition c'
    c''4 e'' d'' g'' | % want: range bar 1, beat 4, Corni in C alto: sounding G5 (and 1 more note, bar 1) is a fourth above D5
    c''1 |
    a''1 | % want: range bar 3, beat 1, Corni in C alto: sounding A5 is a fifth above its highest note, D5, or G5 at the very most
  }
}
