\version "2.24.0"
\relative { c''4 f g f c4 \octaveCheck c' f \octaveCheck c' g \octaveCheck c' f \resetRelativeOctave c' f g }
acmus = \fixed c' { c,2 e' }
\fixed c' { \acmus \fixed c'' { c4 d } \relative { c'4 d } \transpose c d \fixed c' { e4 } g4 }
