\version "2.24.0"
dA = #(ly:make-duration 2 0 2/3)
dB = #(ly:make-duration 2 1)
dC = #(ly:make-duration 2 0 2 3)
dD = #(ly:make-duration -1)
{ c'\dA d'\dB e'\dC f'\dD g' \skip #(ly:make-duration 1 0 3/2) a'4 }
