% What a function takes as a pitch may have a duration behind it: that is its next argument.
\version "2.24.0"
both = #(define-music-function (p m) (ly:pitch? ly:music?) #{ $p $m #})
held = #(define-music-function (p d) (ly:pitch? ly:duration?) #{ $p $d #})
pause = #(define-music-function (d) (ly:duration?) #{ r $d #})
gap = #(define-music-function (d) (ly:duration?) #{ s $d #})
{ \both b'4 c'' \both b' c''8 d' \held f''4.. g' \held a' 8. b' \both c'2-> d' }
{ \pause 4 c'8 \pause 8. d'16 \gap 2 e'4 \pause \breve f' }
{ c'2*#(/ 1 2) d'4 }
