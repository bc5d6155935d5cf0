\version "2.24.0"
\language "italiano"
piano = \p
loud = \f
begin = { \key do \major \time 4/4 \tempo "Allegro" 4=120 }
global = { \begin s1*2 \mark "A" s1*2 \mark #2 s1*4 \bar "|." }
flute = \relative do'' { do4\staccato-\tweak color #red \piano re mi_"dolce" fa | \repeat volta 2 { sol1 | la | } si\accent | \key do \minor sib | do1 | \key mib \major do | do }
kit = \drummode { bassdrum4 snare bassdrum snare | r1*7 }
\score { <<
  \new Staff \with { instrumentName = "Flute" } << \global \flute >>
  \new DrumStaff \with { instrumentName = "Drums" } { \begin \kit }
>> }
