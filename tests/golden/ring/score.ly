\version "2.24.0"
harp = {
  \time 4/4
  c'8 r r4 e'8 g' r4 | % 1
  <c' e'>8-. r r4 c''2 r | % 2
  c'4 r8_"étouffez" r g'16 r r8 r4 | % 3
  c'8 r r4 \clef bass c8 r r4 | % 4
}
vibes = { c''8 r e''4 r2 | g''4 r r2 | c''2 r | R1 }
violin = { c''4 r^"pizz." d''8 r r4 | e''8 r^"arco" e'' r e''2 | e''1 | R1 }
bongo = { c'4 r r2 R1*3 }

\score {
  <<
    \new Staff = "harp" \with { instrumentName = "Harp" } \harp
    \new Staff = "vibes" \with { instrumentName = "Vibraphone" } \vibes
    \new Staff = "violin" \with { instrumentName = "Violin I" } \violin
    \new Staff = "xyl" \with { instrumentName = "Xylophone" } \bongo
  >>
}
