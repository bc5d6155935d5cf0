\version "2.24.0"
% a remark about pizzicato is no text
tuck = ^\markup { \italic "poco" pizzicato }
plain = "sempre pizzicato"
\header { title = \markup { \bold "First" Light } }
\score {
  \new Staff \with { instrumentName = "Fl. 1" shortInstrumentName = \markup { F. 1 } } {
    \tempo "Tempo primo" 4 = 60
    c''4^"pizzicato" d'' e''-\tuck f''^\plain |
    \set Staff.instrumentName = "Picc."
    c''4_\markup { "said \"pizzicato\"" é pizzicato } d'' e'' f''^"pizz." |
  }
  \header { piece = "pizzicato is no text here" }
}
