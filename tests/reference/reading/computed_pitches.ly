\version "2.24.0"
scale = { c' d' e' f' g' a' b' }
pentatonic = { c' d' f' g' a' }
motif = { c'8 d' e' f' g'4-. <c' e'>4 r c''' q }
{ \modalTranspose c' g' \scale \motif \modalTranspose c d \scale \transpose c c' \motif }
{ \modalInversion c' c' \scale \motif \modalInversion d' f' \pentatonic { c'4 d' f' g' e' } }
{ \inversion c' e' \motif \inversion c es' \relative { c'4 d es a } }
\relative c'' { \inversion b' c' { c4 d e } \modalTranspose c d { c d e f g a b } { c4 d } c }
