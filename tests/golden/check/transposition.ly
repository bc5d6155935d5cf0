\version "2.24.0"
<<
  \new Staff \with { instrumentName = "Horn 3 in F" } {
    \transposition es c''4 d'' e'' f'' % want: transposition a written C4 is said to sound E flat 3, but that of the horn sounds F3: it is a whole tone too low
  }
  \new Staff \with { instrumentName = "Clarinet in A" } {
    \transposition a' e4 g c' e' % want: transposition it is an octave too high
  }
  \new Staff \with { instrumentName = "Bass Clarinet" } { \clef bass \transposition bes c4 d e f }
  \new Staff \with { instrumentName = "Clarinet" } { \transposition a c''4 d'' e'' f'' }
  \new Staff \with { instrumentName = "Violin" } { \transposition c' c''4 d'' e'' f'' }
>>
