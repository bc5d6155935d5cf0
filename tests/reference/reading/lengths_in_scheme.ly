\version "2.24.0"
cadenza = \relative { c'4 d8 e f g g4 f2 g4 g }
<< { \cadenza c'1 \cadenza c'1 } { #(mmrest-of-length cadenza) c'1 #(skip-of-length cadenza) c'1 } >>
{ c''1 \afterGrace d''1 { c''16 d'' } c''1 }
{ #(define afterGraceFraction (cons 15 16)) \afterGrace d''1 { c''16 d'' } c''1 \afterGrace 1/2 d''1 { c''16 d'' } c''1 }
