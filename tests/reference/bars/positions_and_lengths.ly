\version "2.24.0"
{ c'1 \set Timing.measurePosition = #(ly:make-moment 1/2) d'2 e'2 \set Timing.measurePosition = #(ly:make-moment 0) f'1 \set Timing.measurePosition = #(ly:make-moment -1/4) g'4 a'1
  \set Score.currentBarNumber = #50 b'1 c''2 \set Score.currentBarNumber = #60 d''2 e''1 \set Timing.measureLength = #(ly:make-moment 3/4) f''2. g''2 \set Timing.measureLength = #(ly:make-moment 1/4) a''2 b''4 c''4 }
