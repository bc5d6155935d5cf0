\version "2.24.0"
% Settings directly before grace notes have their moment.
{ c'4 \set Staff.midiInstrument = "x" \grace d'8 e'4 \key d \major \grace { f'16 g' } \clef bass a4 \override Stem.length = #3 \grace b8 c'4 \grace { \stemUp d'8 \stemDown } \bar "||" e'4 \mark "A" \grace f'16 g'4 \time 3/4 \grace a'8 b'4 }
\score { << { c'4 \tempo 4 = 60 \key d \major d'4 } { c'4 \clef bass \grace e8 f4 } >> }
\score { { \key d \major \grace c'8 d'4 \afterGrace e'4 { f'8 } \key c \major g'4 } }
