\version "2.24.0"
sfff = #(make-dynamic-script "sfff")
loud = \f
one = \relative c'' { c4\< c c\! c | c\p\> c c\loud c | c\cresc c\sfff c4\endcresc c | c4\( d e f\) | c8[ c] c8[ c c c] c[ c] | c4-\tweak color #red ( d) c~ c }
two = \relative c'' { c4\< c c\f c | c\p\> c c\! c | c\cresc c\sfff c4 c | a4\( d e f\) | c8[ c c c] c8[ c] c[ c] | c4( d) c c }
\score { \new Staff \partCombine \one \two \layout {} }
\score { \new Staff \partCombine \two \one \layout {} }
\score { \new Staff \partCombine { c''4 << c''2 { s8 s8\f s8\< s8\! } >> c''4 } { c''4 c''2 c''4 } \layout {} }
\score { \new Staff \partCombine { c''4 << d''2 { \skip 4 \stemUp \clef bass } >> c''4 << d''2 { \skip 4 \clef alto } >> c''2 } { c''4 d''2 c''4 d''2 c'' } \layout {} }
