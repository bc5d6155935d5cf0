\version "2.24.0"
#(define RH rightHandFinger)
LH = #rightHandFinger
{ c4\RH #1 d\LH #2 e4 }
mine = #(define-music-function (m) (ly:music?) #{ $m c''8 #})
#(define othername mine)
#(define acc accent)
tr = \trill
#(define trr tr)
tup = #tuplet
#(define tun transpose)
music = { a4 b }
#(define other music)
{ \othername { d'4 } e'\trr \tup 3/2 { c'8 d' e' } \tun c d { c'4 } \other c'4\acc }
