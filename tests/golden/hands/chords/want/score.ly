% hands: --staff "Harp"
\version "2.24.0"

% eight notes are playable by two hands of four fingers; nine are not
harpRight = {
  \clef bass <g c' e' g'>2\arpeggio\f f4-> f |
  <g c' e' g' c''>1 |
}

harpLeft = {
  \clef bass <c, g, c e>2\arpeggio <d, a, d>4-> <d, a, d> |
  <c, g, c e>1 |
}

\score {
  \new PianoStaff \with { instrumentName = "Harp" } <<
    \set PianoStaff.connectArpeggios = ##t
    \new Staff \harpRight
    \new Staff \harpLeft
  >>
  \layout { }
}
