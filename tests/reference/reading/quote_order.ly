\version "2.24.0"
\addQuote "a" { c''1 }
music = { \quoteDuring "a" { s1 } }
\score { \new Staff \music \layout {} }
\addQuote "a" { d''1 }
\score { \new Staff \music \layout {} }
\new Staff \music
\addQuote "a" { e''1 }
\score { << \new Staff \music \new Staff { \cueDuring "a" #UP { r2 } \cueDuring "a" #UP { s2 } } \new Staff = "x" { f'1 } \new Voice \cueDuring "a" #UP { R1 } >> \layout {} }
\score { \new Staff \keepWithTag #'x { \quoteDuring "a" \tag #'y s1 \tag #'x \quoteDuring "a" s1 } \layout {} }
