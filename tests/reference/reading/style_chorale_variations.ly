\version "2.14.0"
% voices in one staff, with << \\ >> nested and context voices
\score { \new Staff \relative c'' { \key c \major
 << { g4 a b c } \\ { e,4 f g8 f e4 } >> | << { \voiceOne c'2 } \new Voice { \voiceTwo e,4 d } >> \oneVoice g'4 e |
 << { d2 } \\ { \times 2/3 { b8 c d } g,4 } \\ { s4 g'8 f } \\ { r4 r } >> e'4 c |
 \new Voice { c1 } | << c1 e g >> | << { c,4 d } { e f } >> g2 | << { \repeat unfold 2 { c4 e } } \\ { \grace { g,16 a } c,1 } >> |
 << { c''4-1-2 d-\markup{x} e->-. f\p\< } >> | \relative c { c'4 e g c } | { c c } | \relative c'' { << { c2 } \\ { a } >> } c, |
 } \layout { } }
