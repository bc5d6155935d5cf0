\version "2.24.0"
% Names that several instruments bear are told apart by the staves beside them.
\score {
  <<
    \new Staff \with { instrumentName = "Serpent" } { \clef bass R1*2 | c,1 | }
    \new Staff \with { instrumentName = "Corni in F" } { R1*3 | }
    \new Staff \with { instrumentName = "Tr. 1 in C" } {
      R1 |
      c'1 | c1 | % want: range bar 3, beat 1, Tr. 1 in C: sounding C3 is
    }
    \new Staff \with { instrumentName = "Saxophon (Alt) in Es" } {
      \transposition es R1 |
      g1 | % want: range bar 2, beat 1, Saxophon (Alt) in Es: sounding B flat 2 (written G3) is
      R1 |
    }
    \new Staff \with { instrumentName = "Sopranos" } { R1*3 | }
    \new Staff \with { instrumentName = "Altos" } {
      g'1 |
      c1 | % want: range bar 2, beat 1, Altos: sounding C3 is
      R1 |
    }
    \new Staff \with { instrumentName = "Ténors" } { R1*3 | }
    \new Staff \with { instrumentName = "Basses" } {
      \clef bass
      g1 |
      c,1 | % want: range bar 2, beat 1, Basses: sounding C2 is
      R1 |
    }
    \new Staff \with { instrumentName = "1ers Violons" } {
      f1 | % want: range bar 1, beat 1, 1ers Violons: sounding F3 is
      R1*2 |
    }
    \new Staff \with { instrumentName = "V. II" } {
      f1 | % want: range bar 1, beat 1, V. II: sounding F3 is
      R1*2 |
    }
    \new Staff \with { instrumentName = "Altos" } {
      \clef alto
      c1 |
      b,1 | % want: range bar 2, beat 1, Altos: sounding B2 is
      R1 |
    }
    \new Staff \with { instrumentName = "Violoncelles" } { R1*3 | }
    \new Staff \with { instrumentName = "Basses (pizz.)" } {
      \clef bass
      c1 |
      b,,1 | % want: range bar 2, beat 1, Basses (pizz.): written B1 (sounding B0) is
      R1 |
    }
  >>
}

% Beside nobody who tells, they are nobody.
\score {
  <<
    \new Staff \with { instrumentName = "Oboe" } { R1*2 | }
    \new Staff \with { instrumentName = "Bass" } { \clef bass c,,1 | R1 | }
    \new Staff \with { instrumentName = "Tr." } { c,1 | R1 | }
  >>
}
