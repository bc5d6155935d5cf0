\version "2.24.0"
% The touched note and the harmonic that sounds do not count at the top; the stopped note does.
\new Staff \with { instrumentName = "Violin I" } {
  c''''4\flageolet e'''' d'''''4\flageolet c'''''\harmonic |
  <e''' a'''\harmonic>2 <b'''' e'''''\harmonic> | % want: range sounding B7 is
}
% So do notes with the heads of harmonics, and those under "harm."; at the bottom they count.
harmonicHead = \override NoteHead.style = #'harmonic-mixed
\new Staff \with { instrumentName = "Guitar" } {
  \clef "treble_8"
  \harmonicHead e''''4 e'''' \revert NoteHead.style r2 |
  e''''1 | % want: range sounding E7 (written E8)
  \harmonicsOn e''''2 e'''' | \harmonicsOff
  e''''1 | % want: range sounding E7 (written E8)
  \once \override Staff.NoteHead.style = #'harmonic e''''2 e'''' | % want: range bar 5, beat 3, Guitar: sounding E7
  e''''2^"harm." e'''' | e''''1^"no harm." | % want: range bar 7, beat 1
  \harmonicHead c,1 | % want: range sounding C2
}
