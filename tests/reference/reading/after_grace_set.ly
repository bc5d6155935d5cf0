% The fraction of \afterGrace, defined and set in Scheme.
\version "2.24.0"
afterGraceFraction = #(cons 7 8)
{ \afterGrace c'1 { d'16 e' } }
#(set! afterGraceFraction (cons 1 2))
{ \afterGrace c'1 { d'16 e' } }
#(define afterGraceFraction '(1 . 4))
{ \afterGrace c'1 { d'16 e' } }
