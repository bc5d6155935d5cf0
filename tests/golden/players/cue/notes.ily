flutes = {
  \tempo 4 = 60
  <c'' e''>1~ | <c'' e''>2 r2^"2. muta in Piccolo" | << { R1 } \\ { \transposition c'' g''2 r2 } >> |
}
trumpet = { \transposition bes c''4^"cup mute" r2. | R1 | c''4^"open" c''4~ 2 | }
drums = \drummode { sn2 bd | R1 | tri1 | }
