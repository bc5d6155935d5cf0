\version "2.24.0"
subject = \relative { c''8 b c4 g aes8 g }
answer = \transpose c g, \subject
counter = { \subject \transpose c d \subject }
"voice.1" = { \answer r2 r8 c''[ d'' es''] }
"voice 2" = { R1 \counter }
tabA = { c'1 }
mvt = #'((a . 1))
"three.3" = { g1 g }
fugue = << \new Staff { \clef treble \"voice.1" } \new Staff \"voice 2" \new Staff { \clef bass \"three.3" \tabA } >>
\score { \fugue }
\score { \displayLilyMusic \subject }
\score { \inversion c'' g' \subject }
\score { \retrograde { c'4 d' e'8 f' g' a' } }
\score { \modalTranspose c e { c d e f g a b c' } { c'4 d' e' } }
\score { \relative { c'4 g' \octaveCheck g' c, c' d } }
