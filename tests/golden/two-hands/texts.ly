\version "2.24.0"

% Texts that concern both hands, texts for the feet, a pedal line in a voice that only the right hand plays.
harp = {
  \time 4/4 <c, c'''>4-"let ring" c-"l.v." c'''-"lasciar vibrare" c, |
  <c' c'''>2-\markup { \harp-pedal "^v-|vv-^" } c,2^"let ring" |
}
piano = {
  \time 4/4 << { c'''4\sustainOn d''' e''' f'''\sustainOff } \\ { c4 d e f } >> |
  c''4-"una corda" c,-"dolce" c''-"con Ped." c,-"tre corde" |
}

\score {
  <<
    \new Staff = "h" \with { instrumentName = "Harp" } \harp
    \new Staff = "p" \with { instrumentName = "Piano" } \piano
  >>
}
