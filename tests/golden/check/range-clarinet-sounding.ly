\version "2.24.0"
% Without \transposition sounding D3 may be right (entered as it sounds), and written E3 as well.
\new Staff \with { instrumentName = "Clarinet 1" } {
  d4 d' d'' d''' |
  cis4 d' d'' d''' | % want: range sounding C sharp 3 (written D sharp 3) is a semitone below
}
