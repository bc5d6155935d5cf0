% hands: --staff "Harp"
\version "2.24.0"

% eight notes are playable by two hands of four fingers; nine are not
harp = {
  <c, g, c e g c' e' g'>2\arpeggio\f <d, a, d f>4-> q |
  <c, g, c e g c' e' g' c''>1 |
}

\score {
  \new Staff \with { instrumentName = "Harp" } \harp
  \layout { }
}
