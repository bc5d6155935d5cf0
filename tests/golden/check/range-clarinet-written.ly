\version "2.24.0"
% With \transposition the notes are as the player reads them: written E3 is the lowest.
\new Staff \with { instrumentName = "Clarinet in Bb" } {
  \transposition bes
  e4 e' e'' e''' |
  es4 e' e'' e''' | % want: range sounding D flat 3 (written E flat 3) is a semitone below its lowest note, D3
}
