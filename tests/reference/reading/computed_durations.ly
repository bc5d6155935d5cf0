\version "2.24.0"
motif = { c'4 d'8. <e' g'>16*2/3 r4 R1 s4. c'4 8 }
{ \shiftDurations 1 0 \motif \shiftDurations -1 1 \motif \shiftDurations 0 -1 \motif }
{ \featherDurations 2/1 { c'16 d' e' f' } \featherDurations 2/3 { c'32[ d' r <e' g'>] } g'4 }
\relative { \featherDurations 5/4 { c'16 d e f } g4 }
