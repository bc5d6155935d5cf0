\version "2.24.0"
soft = \mp
dolce = ^\markup \italic "espr."
global = { \key c \major \time 4/4 \tempo "Allegro" 4 = 126 s1 \mark \default s1 \mark \default s1*2 \mark \default s1*4 \bar "|." }
flute = \relative c'' { c4-.\soft d e\dolce f | \repeat volta 3 { g1 | a | } b-> | \key as \major bes | \repeat unfold 3 { c1 | } }
kit = \drummode { bd4 hh bd sn | r1*7 }
\score { <<
  \new Staff \with { instrumentName = "Flute" } << \global \flute >>
  \new DrumStaff \with { instrumentName = "Drums" } << \global \kit >>
>> }
