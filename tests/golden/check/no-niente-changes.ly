\version "2.24.0"

% Who fades is the instrument that plays at that time, not the one with which the staff begins.
\score {
  \new Staff \with { instrumentName = "Clarinet in Bb" } {
    \tempo 4 = 60
    \transposition bes
    c''1\p\> | c''1^"al niente" |
    R1*3 |
    \set Staff.instrumentName = "Oboe"
    \transposition c'
    c''1\p\> | c''1^"al niente" | % want: no-niente bar 7, beat 1, Clarinet in Bb: a fade to nothing, but the oboe's tone breaks off before
    R1*3 |
    \set Staff.instrumentName = "Clarinet in Bb"
    \transposition bes
    c''1\p\> | c''1^"al niente" |
  }
}
