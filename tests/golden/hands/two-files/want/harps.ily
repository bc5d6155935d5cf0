global = { \time 3/4 s2. * 2 }

harpOneRight = {
  r2 <c' e'>4
  | R2.
}

harpOneLeft = {
  \clef bass c,4 g, e
  | c,2.
}

harpTwo = {
  c' d' e'
  f'2.
}
