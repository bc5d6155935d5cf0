\version "2.24.0"
one = \relative c'' { \key bes \major R1 | g4 a bes c | d2 d | r4 es\f es( d) | \partCombineApart c2 r | \partCombineAutomatic d4 r d r | \repeat volta 2 { d1 } | bes1\fermata }
two = \relative c'' { \key bes \major R1 | g4 a bes c | bes2 c | R1 | c2 r | r4 d r d | \repeat volta 2 { \tuplet 3/2 { bes4 c d } bes2 } | r2 bes2 }
three = \relative { c4 e g c | R1 | r2 g4 4 | c,1 | \partCombineChords e1 | \partCombineAutomatic R1*2 | c1 }
four = \relative { \clef bass c4 e g c | r1 | g2 r | g,1 | f1 | R1*2 | c1 }
\score { <<
  \new Staff \with { \consists "Merge_rests_engraver" } \partCombine \one \two
  \new Staff \partCombine #'(0 . 12) \three \four
  \new Staff << \set Staff.soloText = #"I." \set Staff.aDueText = "zu 2" \partCombineUp \one \two >>
>> }
