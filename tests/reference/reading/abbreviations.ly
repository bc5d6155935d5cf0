\version "2.24.0"
% What stands before \etc is read at each use and completed by what follows it; a note has the place of the use.
dup = \tuplet 3/2 \etc
tp = \transpose c d \etc
both = \tp \dup \etc
mode = \key c \etc
quad = \repeat unfold 4 \etc
wide = \once \override TextScript.padding = \etc
kw = \keepWithTag #'ab \etc
rel = \relative c'' \etc
par = \parenthesize \etc
under = _\etc
dyn = -\tweak self-alignment-X #0 \etc
red = -\tweak color #red \dyn \etc
{ c'4 d'\dyn -. c'\under \mf c'8 \both { c'8 d' e' } c'4\red \f f'8 }
{ c'4 \mode \major \quad c'4 \quad { \par d'8 <e' \par g'>4 } \wide #3 e'4 \kw { \tag #'ab f' } g' \rel { c8 e, } a'4 }
