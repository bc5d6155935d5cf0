\version "2.24.0"
violins = { <e'' c'''>1 | <a'' c''''>1 | <a'' f''''>1 | <a'' fis''''>1 }
violas = { <c' e' g'>1 | <c' e' g' c''>2 <c' a'>2 | R1*2 }
cellos = { <c e g>1 | <c e g c'>1 | <c g>1 | R1 }
low = { <c, g>1 | <c e'>1 | R1*2 }
flutes = { <c'' e''>1 | <c'' e'' g''>1 | R1*2 }
\score {
  <<
    \new Staff \with { instrumentName = "Flutes 1.2" } \flutes
    \new Staff \with { instrumentName = "Violins" } \violins
    \new Staff \with { instrumentName = "Violas" } \violas
    \new Staff \with { instrumentName = "Cellos" } { \clef bass \cellos }
    \new Staff \with { instrumentName = "Celli e Bassi" } { \clef bass \low }
  >>
}
