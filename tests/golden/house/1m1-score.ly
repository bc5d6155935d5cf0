\version "2.24.0"
% a remark about pizzicato is no text
tuck = ^\markup { \italic "poco" pizz. }
plain = "sempre pizz."
\header { title = "1m1 First Light" composer = "T. Orrelby" }
\score {
  \new Staff \with { instrumentName = "Flute 1" shortInstrumentName = \markup { Fl 1 } } {
    \tempo "Tempo I" 4 = 60
    c''4^"pizz." d'' e''-\tuck f''^\plain |
    \set Staff.instrumentName = "Piccolo"
    c''4_\markup { "said" é } d'' e'' f''^"pizz." |
  }
  \header { piece = "x is no text here" }
}
