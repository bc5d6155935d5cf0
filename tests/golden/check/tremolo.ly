\version "2.24.0"

% Two notes that alternate; on one note a tremolo is none of this rule's.

oboe = {
  \repeat tremolo 8 { c''16 e'' } | % want: tremolo bar 1, beat 1, Oboe: C5 and E5 alternate as a tremolo (bars 1, 3-4), poor on the oboe
  \repeat tremolo 16 c''16 |
  \repeat tremolo 8 { c''16 g'' } |
  \repeat tremolo 4 { c''16 e'' } \repeat tremolo 4 { <c'' e''>16 <d'' f''> } |
}

\score {
  <<
    \new Staff \with { instrumentName = "Flute" } \oboe
    \new Staff \with { instrumentName = "Oboe" } \oboe
    \new Staff \with { instrumentName = "Clarinet in A" } { \transposition a \oboe }
    \new Staff \with { instrumentName = "Horn in F" } { \transposition f \repeat tremolo 8 { c''16 e'' } R1*3 } % want: tremolo Horn in F: C5 and E5 alternate as a tremolo, poor on the horn
    \new Staff \with { instrumentName = "Violin" } \oboe
    \new Staff \oboe
  >>
}
