\version "2.24.0"
x = \chordmode { c1:7 f:maj9^7/a }
\score { \new Staff {
  \relative c'' { \chordmode { c1 g:7 } c4 g \x c4 }
  \transpose c d { \chordmode { c2:m d'4:sus4 } }
  \relative { c''4 <e g>4 \chordmode { g2 } q4 c }
  \chordmode { c4 4 q r s <c e>4 c8 \repeat unfold 2 { g } \tuplet 3/2 { c8:m d:m e:m } }
  \fixed c'' { \chordmode { c } }
} \layout {} }
