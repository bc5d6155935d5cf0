\version "2.24.0"
% The name says no key; \transposition does: the clarinet in A goes down to C sharp 3.
\new Staff \with { instrumentName = "Clarinetti" } {
  \transposition a
  e4 e' e'' e''' |
  es4 e' e'' e''' | % want: range sounding C3 (written E flat 3) is a semitone below its lowest note, C sharp 3
}
