tuck = ^\markup { \italic "poco" pizzicato }
violin = {
  \tempo 4 = 60
  c''1^"pizzicato" |
  d''4 r2. |
  c''4( d'') e''2 |
  c''2 d''4 e'' f''4 |
  g''2. |
  c''4 d''4-\tuck r2 |
  R1^\markup \bold Lento | R1 |
}
viola = {
  R1*6 |
  c'2 d'4 f' g'4 | a'2
  b'4 |
}
