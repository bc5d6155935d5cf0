\version "2.24.0"
qa = \relative c' { c4 d e f g a b c d e f g a b c d }
\addQuote "a" \qa
cue = { s1 \quoteDuring "a" { s2 c2 } }
\score { <<
  \new Staff { \tuplet 3/2 { \quoteDuring "a" { s1 } } s4 \repeat unfold 2 { \quoteDuring "a" { e4 s4 } } }
  \new Staff \relative { c''4 \quoteDuring "a" { s4 c,4 } c }
  \new Staff \transpose c d { \cue }
  \new Staff { \cue }
  \new Staff { s2 << { \quoteDuring "a" { s2 } } \\ { \quoteDuring "a" { s1 } } >> }
  \new Staff \partCombine { c''1 \quoteDuring "a" { s1 } c''1 } { c''1 d''1 \quoteDuring "a" { s1 } }
  \new Staff { \unfoldRepeats { \repeat volta 2 { \quoteDuring "a" { s1 } } } \quoteDuring "a" { \repeat percent 2 { s2 } } }
  \new Staff { \grace c8 \quoteDuring "a" { s1 } }
  \new Staff { \quoteDuring "a" { s4 \new Voice { s2 } s4 } }
>> \layout { } }
