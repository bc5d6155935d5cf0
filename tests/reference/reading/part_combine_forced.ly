\version "2.24.0"
one = \relative c'' { c4 \partCombineApart c c \partCombineAutomatic c | \once \partCombineApart c c \partCombineChords c d | \partCombineAutomatic r2 \partCombineSoloI c4 c }
two = \relative c'' { c4 c c c | c c c c | \partCombineSoloII r4 c \partCombineUnisono c \partCombineForce \default c }
\score { \new Staff \partCombine \one \two \layout {} }
\score { \new Staff \partCombine { c''4 \partCombineForce #'solo2 c'' c'' \once \partCombineAutomatic c'' c'' \partCombineUnisono e'' c'' c'' } { c''4 c'' c'' c'' c'' c'' c'' c'' } \layout {} }
\score { \new Staff << \partCombine { c''4 c'' e'' g'' } { \partCombineSoloI c''4 \partCombineApart c'' c'' d'' } >> \layout {} }
\score { \new Staff \partCombine { \partCombineChords c''2 d'' g''1 } { c'2 b' s1 } \layout {} }
