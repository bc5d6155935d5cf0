\version "2.24.0"
flute = \relative c'' { R1 c4\f( d) e-. f r4 g2 a4 | \tuplet 3/2 { b8 c d } e2. }
\addQuote "flute" { \flute }
\score { <<
  \new Staff \relative c' { c1 \cueDuring "flute" #UP { R1 } \cueDuringWithClef "flute" #DOWN "bass" { r4 r2. } c1 }
  \new Staff \new Voice = "x" \relative c' { c1 \cueDuring #"flute" #-1 { d4 R2. } \transposedCueDuring "flute" #UP f { R1 } \quoteDuring "flute" s1 }
  \new Staff { \killCues { s1 \cueDuring "flute" #UP { c1 } } \cueDuring "flute" #1 { c1 } }
  \new Staff { s1 \quoteDuring "nothing" { d'1 } << { e'1 } \\ { \quoteDuring "flute" { s1 } } >> }
>> \layout { } }
