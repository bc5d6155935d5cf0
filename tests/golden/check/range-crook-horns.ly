\version "2.24.0"
% Horns in high keys are those of the natural horn's time: usual up to the twelfth partial, which may be soft.
\score {
  <<
    \new Staff \with { instrumentName = "Corni in A" } {
      \transposition a
      g''2\p e'' | a''1\f | % want: range bar 2, beat 1, Corni in A: sounding F sharp 5 (written A5) is a whole tone above E5
      c'''1 | % want: range bar 3, beat 1, Corni in A: sounding A5 (written C6)
    }
    \new Staff \with { instrumentName = "Corni in C alto" } {
      \transposition c'
      g''2 e'' | a''1 | % want: range bar 2, beat 1, Corni in C alto: sounding A5 is a whole tone above G5, the usual top (some reach A5)
      bes''1 | % want: range bar 3, beat 1, Corni in C alto: sounding B flat 5 is a minor third above its highest note, G5, or A5 at the very most
    }
    \new Staff \with { instrumentName = "Horn in F" } {
      \transposition f
      g''2 a'' | b''1 | % want: range bar 2, beat 1, Horn in F: sounding E5 (written B5) is a whole tone above D5
      d'''1 | % want: range bar 3, beat 1, Horn in F: sounding G5
    }
  >>
}
