\version "2.24.0"
% The touched note and the harmonic that sounds do not count at the top; the stopped note does.
\new Staff \with { instrumentName = "Violin I" } {
  c''''4\flageolet e'''' d'''''4\flageolet c'''''\harmonic |
  <e''' a'''\harmonic>2 <b'''' e'''''\harmonic> | % want: range sounding B7 is
}
