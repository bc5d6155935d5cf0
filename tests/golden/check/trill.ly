\version "2.24.0"

% Trills by the key; the second note is that of the key unless a sign says otherwise.

oboe = {
  \key f \major
  bes1\trill % want: trill bar 1, beat 1, Oboe: a trill of written B flat 3 and C4 is awkward here
  a'1\trill
  \key b \major
  ais1\trill % want: trill a trill of written A sharp 3 and B3 is impossible here
  ais1\startTrillSpan r1\stopTrillSpan
  b1\trill^\markup \sharp % a sign: which note is not known
  b1\trill % want: trill a trill of written B3 and C sharp 4 is awkward here; take another note
}

trombone = {
  \clef tenor
  g'1\trill
  e'1\trill % want: trill bar 2, beat 1, Trombone: a trill of written E4 and F4: a slide has only lip trills, whole tones from F4 on
  e'1\trill^\markup \natural
  f'1\trill c'2\trill c'2\trill % want: trill written C4 and D4: a slide has only lip trills, whole tones from F4 on (bars 5, 7)
  g'1 c'1\trill
}

% In A the written notes of a flute would be others: but a horn has no bad pairs.
horn = { \transposition f c'1\trill R1*6 }

% By the key of the transposed part: written B3 and C sharp 4.
amore = \transpose a c' { \key gis \minor gis1\trill R1*6 } % want: trill Oboe d'amore in A: a trill of written B3 and C sharp 4 is awkward here

\score {
  <<
    \new Staff \with { instrumentName = "Oboe" } \oboe
    \new Staff \with { instrumentName = "Oboe d'amore in A" } { \transposition a \amore }
    \new Staff \with { instrumentName = "Trombone" } \trombone
    \new Staff \with { instrumentName = "Horn in F" } \horn
    \new Staff \with { instrumentName = "Violin" } { g1\trill R1*6 }
  >>
}
