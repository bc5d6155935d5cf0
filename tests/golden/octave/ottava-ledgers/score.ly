% octave: --staff pf --ottava add --ledgers 2 --bars 1-2
\version "2.24.0"
\score {
  \new Staff = "pf" << { g'''4 a'' b''' r | c''''2 d'''' | e''''1 } \\ { c''2 r | d''1 | c'1 } >>
  % the old way of writing numbers is kept: \ottava #0
}
