% hands: --staff "Harp"
\version "2.24.0"

% eight notes are playable by two hands of four fingers; nine are not
harpRight = {
  \clef bass <g c' e' g'>2\arpeggio\f <d f>4-> <d f> |
  <g c' e' g' c''>1 |
}

harpLeft = {
  \clef bass <c, g, c e>2\arpeggio <d, a,>4-> <d, a,> |
  <c, g, c e>1 |
}

\score {
  \new PianoStaff \with { instrumentName = "Harp" } <<
    \new Staff \harpRight
    \new Staff \harpLeft
  >>
  \layout { }
}
