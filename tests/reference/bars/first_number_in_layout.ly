\version "2.24.0"

% A later movement whose \layout says where the bar numbers go on; what a staff is given counts for nothing.
\score {
  { \partial 2. c'2. d'1 e'1 }
  \layout { \context { \Score currentBarNumber = #10 } }
}
\score {
  { c'1 d' \set Score.currentBarNumber = 20 e' f' }
  \layout { \context { \Staff currentBarNumber = #30 } \context { \Score currentBarNumber = 5 } }
}
\score { { c'1 d' e' } \layout { } }
\score {
  \new Score \with { currentBarNumber = #7 } { c'1 d' e' }
  \layout { \context { \Score currentBarNumber = #3 } }
}
\score { { c'1 d' e' } }
\layout { \context { \Score currentBarNumber = #100 } } % for what comes, and for scores without a \layout of their own
\score { { c'1 d' e' } \layout { } }
\score { { c'1 d' e' } }
