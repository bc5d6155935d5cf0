\version "2.24.0"
\new Staff \with { instrumentName = "Flute 3" } {
  c'4 d' e' f' |
  \set Staff.instrumentName = "Piccolo"
  c'4 d' e' f' | % want: range written C4 (sounding C5) is a whole tone below its lowest note, D4 % want: chairs flute to piccolo, no time
  \set Staff.instrumentName = "Alto Flute in G"
  \transposition g
  c'4 d' e' f' | % want: chairs piccolo to alto flute, no time
}
