vI = \relative do'' { \key do \major \time 2/4 do4.\p sol8 | mi'16( fa sol mi) do8 r | \solo re4^\dolce sol,\fz | R2*2 | \trem #8 { mi32 sol } \trem 4 { do16 mi } | re2\cresc | sol,4\f r \bar "||" }
vII = \relative do' { \key do \major \time 2/4 mi16 sol do sol mi sol do sol | do,8 do'4 do8 | si sol\sempre si sol | \repeat unfold 2 { do,2:16 } | mi4 sol8*2/3 do mi | fa4 << si, \\ re, >> | si' r }
aria = \relative do'' { \key do \major \time 2/4 R2*3 | do4. sol8 | mi'8.[( fa16)] sol8 r | mi4 \grace { fa16[( mi re] } do8) r | re8 re16 re sol8. fa16 | mi4 r }
testo = \lyricmode { Por -- gi, a -- mor, qual -- che ri -- sto -- ro al mio duo lo }
bassi = \relative do { \clef bass \key do \major \time 2/4 do8 do do do | do4 r | sol'8 sol sol sol | do,4 mi | do r | \times 4/6 { do8 do do mi mi mi } | sol4 sol | \clef tenor sol' r }
