\version "2.24.0"
% A text of one word needs no quotes.
\score {
  \new Staff \with { instrumentName = "Violin" } {
    \tempo 4 = 60
    c''4^pizz r d'' r | c''4(^arco d'') r2 | c''4_pizzicato r d'' r | c''2( d'') | % want: technique-open pizzicato since bar 3
  }
}
