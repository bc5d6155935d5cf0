\version "2.24.0"
horn = { \transposition f c''2 d'' \transposition es e''4 f'' g''2 }
\addQuote "horn" \horn
\new Staff { \transposition bes, \transposedCueDuring "horn" #UP g' { R1*2 } }
\new Staff { \transposition bes, \transposedCueDuring "horn" #UP c' { R1*2 } }
\new Staff { \transposedCueDuring "horn" #UP d' { R1*2 } }
\new Staff { \transpose c d \cueDuring "horn" #UP { R1 } \transpose c d \transposedCueDuring "horn" #UP a { R1 } }
\new Staff \transpose c g { \cueDuring "horn" #UP { R1 } \transposition d \cueDuring "horn" #UP { R1 } }
\new Staff \transpose c g { \quoteDuring "horn" { s1 } \transposition d \quoteDuring "horn" {s1 }  }
\new Staff \relative c''' { \transposition bes \quoteDuring "horn" { s1 } }
