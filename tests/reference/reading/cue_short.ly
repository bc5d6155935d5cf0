\version "2.24.0"
cl = \relative c'' { c4 d e f | g1 } \addQuote "cl" \cl \new Staff { c'4 \cueDuring "cl" #UP { r4 r2 } \quoteDuring "cl" { s2 } d'2 }
