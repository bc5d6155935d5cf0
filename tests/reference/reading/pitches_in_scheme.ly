\version "2.24.0"
pA = #(ly:make-pitch 0 9)
pB = #(ly:make-pitch 0 -1)
pC = #(ly:make-pitch 0 2 DOUBLE-FLAT)
pD = #(ly:make-pitch 1 2 SEMI-FLAT)
pE = #(ly:make-pitch 1 2 -1/2)
pF = #(ly:make-pitch 1 2 THREE-Q-SHARP)
pG = #(ly:make-pitch -1 -9 SHARP)
{ \transpose c' \pA { c'4 } \transpose c' \pB { c'4 } \transpose c' \pC { c' } \transpose c' \pD { c' } \transpose c' \pE c' \transpose c' \pF c' \transpose c' \pG c' }
