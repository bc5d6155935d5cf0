\version "2.24.0"
fA = #(define-music-function (num pit mus) ((number? 2) (ly:pitch? #{ d' #}) ly:music?) #{ \repeat unfold $num \transpose c' $pit $mus #})
{ \fA { c'4 } c' \fA 3 { c' c'4 } \fA 1 e' c'4 \fA e' { c'4 } \fA \default e' c'4 }
