\version "2.24.0"
one = \relative c'' { c4 d e f | g2 r | R1 | c,4( d) e2~ | e4 r c c | s1 | <c e>2 g4 g }
two = \relative c'' { c4 d c d | g2 r | c,4 c c c | a4( b) c2~ | c4 c r c | s1 | <c e>2 g4 f }
\score { \new Staff \partCombine \one \two \layout {} }
\score { \new Staff { \partCombineUp \one \two \partCombineDown #'(1 . 3) \two \one c''1 } \layout {} }
\score { \new Staff \relative c' { c4 \partCombine { c'4 d' } { c' b } c4 } \layout {} }
\score { \new Staff \transpose c d \partCombine { c''4 d'' e'' } { c''4 b' c' g' } \layout {} }
\score { << \new Staff = "a" << \key d \major \time 3/4 \partCombine #'(0 . 12) \one \two >> \new Staff { c'1*7 } >> \layout {} }
\score { \new StaffGroup << \new Staff { \repeat unfold 2 { \partCombine { c''4 d'' } { c''4 d'' } } } \new Staff \repeat volta 2 { \partCombine { r4 d'' } { c''4 r } } >> \layout {} }
