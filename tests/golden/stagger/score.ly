\version "2.24.0"
\score {
  <<
    \new Staff \with { instrumentName = "Oboe" } { \tempo 4 = 60 R1 | e''1\p\>~ | e''1 | R1\! | }
    \new Staff \with { instrumentName = "Clarinet in A" } { \transposition a R1 | bes'1\p\>~ | bes'1 | R1\! | }
    \new Staff \with { instrumentName = "Horn in F" } { \transposition f R1 | g'1\p\>~ | g'1\! | R1 | }
    \new Staff \with { instrumentName = "Trombone 1" } { \clef bass R1 | g1\p\>~ | g2~ g2 | R1\pp | }
    \new Staff \with { instrumentName = "Violin I" } { R1 | e''1\p~ | e''1 | R1 | }
    \new Staff \with { instrumentName = "Violoncello" } { \clef bass R1 | c1\p~ | c1 | R1 | }
    \new Staff \with { instrumentName = "Flute" } { R1 | c''1\p~ | c''1 | c'' | }
    \new Staff \with { instrumentName = "Harp" } { R1 | c'1~ | c'1 | R1 | }
  >>
}
