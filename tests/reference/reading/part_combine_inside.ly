\version "2.24.0"
% A combined pair inside a part of another: a context named there is not the outer part's voice.
pair = \partCombine { \context Voice { c''4 d'' } \new Voice { e''2 } } { c''4 b' \context Voice = "one" { a'2 } }
\score { \new Staff \partCombine \pair { c'4 d' e'2 } \layout { } }
\score { \new Staff \partCombine { g'1 } { \pair } \layout { } }
\score { \new Staff \partCombine \pair \pair \layout { } }
