\version "2.24.0"

% Registers: what is too soft or too loud in them, and what does not come through.

oboe = \relative c' {
  d1\pp | c1 | % want: register bar 2, beat 1, Oboe: 2 notes up to bar 3 at pp in the low register, where p is as soft as it goes
  bes1 | d1\p | c1 |
  c1\ppp\< | d1\f | % want: register bar 6, beat 1, Oboe: at ppp in the low register
  R1*7
}

flute = \relative c' {
  c1\ff | % want: register bar 1, beat 1, Flute: at ff in the low register, where f is as loud as it goes; double it
  c1\f d'1\ff c''1 |
  c1\p | % want: register bar 5, beat 1, Flute: at p in the extreme register, where mf is as soft as it goes
  r1 r1 |
  d,,,4\mf e f g | a g f e | d1 | % want: register bar 8, beat 1, Flute: 9 notes up to bar 10 at mf in the low register won't come through beside Horns in F and others (7 times its weight)
  d4 e f g | a g f e | % nobody beside it but a soft one
  d4 e f g | a g f e | % the trombone doubles it
}

trombone = { \clef bass R1*7 c'1\mf b c' c'1\p b d'4\mf e' f' g' a' g' f' e' }
horns = { \transposition f R1*7 << { c''1\f c'' c'' } \\ { g' g' g' } >> R1*4 }

% Without \transposition a horn may be read in two ways: only what is in the register either way is told.
hornUnsaid = {
  e''1\ppp | % the middle register, if it is a written pitch
  f''1\pp | % want: register Horn: at pp in the high register, where p is as soft as it goes
  R1*12
}

\score {
  <<
    \new Staff \with { instrumentName = "Flute" } \flute
    \new Staff \with { instrumentName = "Oboe" } \oboe
    \new Staff \with { instrumentName = "Horns in F" } \horns
    \new Staff \with { instrumentName = "Horn" } \hornUnsaid
    \new Staff \with { instrumentName = "Trombone" } \trombone
    \new Staff \with { instrumentName = "Theremin" } { c1\ppp R1*13 }
  >>
}

% Nothing is said without dynamics.
\score {
  \new Staff \with { instrumentName = "Oboe" } { bes1 bes1 }
}

% What is a little too loud for its register is nothing where another instrument has it in unison.
\score {
  <<
    \new Staff \with { instrumentName = "Flute" } {
      e'1\ff | e'1 |
      R1*5 | e'1 | % want: register bar 8, beat 1, Flute: at ff in the low register
    }
    \new Staff \with { instrumentName = "Flute 2" } {
      R1*7\ff | e'1 | % want: register bar 8, beat 1, Flute 2: at ff in the low register
    }
    \new Staff \with { instrumentName = "Oboe" } { e'1\ff | e' | R1*5 | e''1 | }
  >>
}
