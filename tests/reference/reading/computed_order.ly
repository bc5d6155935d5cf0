\version "2.24.0"
motif = { c'8 d' e'4 <f' a'>4. q8 4 \times 2/3 { c'8 d' e' } \grace f'16 g'2 }
{ \motif \retrograde \motif }
{ \retrograde \relative { c'4( d e f) | \stemUp g1 } }
\retrograde << { c'4 d' e'2 } \\ { e4 f g2 } >>
{ \retrograde \retrograde \motif \retrograde \repeat unfold 2 { c'4 d' } }
