\version "2.24.0"

% What is too wide, what is marked as rolled, what only crossed hands can hold, what mallets reach.
piano = {
  \time 4/4 <c, g e' c'' e'''>1 |
  <c, g e' c'' e'''>1\arpeggio |
  << { c'''4 c' c, c' } \\ { <e' g'>1 } >> |
}
marimba = {
  \time 4/4 <c, e a c'>2 <c'' e''' f''' a'''>2 |
  <e' g' b'>1 |
  R1 |
}

\score {
  <<
    \new Staff = "p" \with { instrumentName = "Piano" } \piano
    \new Staff = "m" \with { instrumentName = "Marimba" } \marimba
  >>
}
