\version "2.24.0"
% What some have is told once a staff, at the furthest note, with the bars of all; what nobody has, bar by bar.
horn = {
  \transposition f
  c''1 | bes''2 c''' | % want: range sounding F5 (written C6) (and 4 more notes, bars 2, 4-6) is a minor third above D5, the usual top (some reach F5); fits an octave lower
  c''1 | b''2 a'' | bes''1 | b''1 |
  e'''1 | % want: range a fifth above its highest note, D5, or F5 at the very most
}
\new Staff \with { instrumentName = "Horn in F" } \horn
