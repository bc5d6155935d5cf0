\version "2.24.0"
\score { \new Staff \partCombine { \grace d''8 c''4 \appoggiatura d''8 c''4 \grace { d''16 e'' } r4 \afterGrace c''4 { d''16 } } { c''4 \appoggiatura d''8 c''4 c''4 c'' } \layout {} }
\score { \new Staff \partCombine { \tuplet 3/2 { c''8 d'' e'' } c''4 \tuplet 3/2 { r8 c'' c'' } \repeat tremolo 4 { c''16 } \repeat percent 2 { c''2 } } { \tuplet 3/2 { c''8 d'' e'' } \tuplet 3/2 { c''8 r c'' } r4 c''4 c''2 r } \layout {} }
\score { \new Staff \partCombine { R1*2 c''1 R1 c''2 r } { R1 c''1 c'' R1 R1*2 } \layout {} }
\score { \new Staff \partCombine { r2 R2 r4 r4 R2*3 s1 c''4 } { R1 r2 R2*2 s2 r2 s2 c''4 } \layout {} }
\score { \new Staff \partCombine { \skip 4 c''4 d'' c'' } { \skip 4 c''4 c'' r } \layout {} }
\score { \new Staff \partCombine { c''4 << { c''4 d'' } \\ { a' b' } >> \new Voice { c''4 } c'' } { c''4 << { c''4 d'' } \\ { a' b' } >> c''4 c'' } \layout {} }
\score { \new Staff { s4 \partCombine { c''4 } { c''4 c'' c'' } } \layout {} }
\score { \new Staff { \partCombine { } { c''4 c'' } \partCombine { c''2 c'' } { r4 \acciaccatura d''8 c''4 } } \layout {} }
\score { \new Staff \keepWithTag #'a \partCombine { c''4 \tag #'b c'' d'' c'' } { c''4 \tag #'a d''4 d'' c'' } \layout {} }
\score { \new Staff \unfoldRepeats \partCombine { \repeat volta 2 { c''4 r } c'' } { \repeat volta 2 { c''4 c'' } r } \layout {} }
