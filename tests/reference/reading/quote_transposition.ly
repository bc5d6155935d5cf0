\version "2.24.0"
horn = { \transposition f c''2 d'' \transposition es e''4 f'' g''2 }
clar = \transpose c d { \transposition bes c'2 d' e' f' }
\addQuote "horn" \horn
\addQuote "clar" \clar
\score { <<
  \new Staff { \quoteDuring "horn" { s1*2 } }
  \new Staff { \transposition bes \quoteDuring "horn" { s1 s2 \transposition a s2 } }
  \new Staff { \transposition bes, \transposedCueDuring "horn" #UP g' { R1*2 } }
  \new Staff { \transposition bes, \cueDuring "clar" #UP { R1*2 } }
  \new Staff \transpose c g { \cueDuring "clar" #UP { R1 } \transposition d \cueDuring "horn" #UP { R1 } }
  \new Staff << { s1. \transposition a s2 } { \quoteDuring "horn" { s1*2 } } >>
  \new Staff { \transpose c d \cueDuring "horn" #UP { R1 } \transpose c d \transposedCueDuring "horn" #UP a { R1 } }
>> \layout { } }
