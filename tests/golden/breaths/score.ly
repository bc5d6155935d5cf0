\version "2.24.0"
flute = {
  \time 4/4 \tempo 4 = 60
  c''4(\mf d'' e'' f'' | g''4 a'' b'' c''') | % 1
  e''4 d'' c''8 b' a' g' | c''2. a'4 | % 3
  c''1~ | c''1~ | c''1~ | c''2 r | % 5
}
second = {
  c''4(\mf d'' e'' f'' | g''4 a'' b'' c''') |
  e''4 d'' c''8 b' a' g' | c''2. a'4 |
  g'1 | R1*2 | \repeat unfold 2 { d''4 } r2 |
}
tuba = { \clef bass c2\ff d | e2 f\p | g2 a | \tuplet 3/2 { g4 f e } d2 | c1 | R1*3 | }
violin = { \repeat unfold 8 { g'1 } }
soprano = { \clef treble c''4 c'' d'' d'' | e''2 e'' | f''4 f'' g'' g'' | c''4 c'' d'' d'' | c''1 | R1*3 | }
words = \lyricmode { Praise and glo -- ry, sing -- ing all to -- ge -- ther in the morn -- ing. }

\score {
  <<
    \new Staff \with { instrumentName = "Flute 1" } \flute
    \new Staff \with { instrumentName = "Flute 2" } \second
    \new Staff \with { instrumentName = "Tuba" } \tuba
    \new Staff \with { instrumentName = "Soprano" } { \new Voice = "s" \soprano }
    \new Lyrics \lyricsto "s" \words
    \new Staff \with { instrumentName = "Violin I" } \violin
  >>
}
