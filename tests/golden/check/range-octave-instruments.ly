\version "2.24.0"
% Entered as the player reads them, with \transposition or without; with a clef that says the octave, as
% they sound.
<<
  \new Staff \with { instrumentName = "Double Bass" } { \clef bass e,4 g, a, d | }
  \new Staff \with { instrumentName = "Contrabass" } { \transposition c \clef bass e,4 g, a, d | }
  \new Staff \with { instrumentName = "Piccolo" } { d'4 e'' f''' a''' | }
  \new Staff \with { instrumentName = "Celesta" } { \transposition c'' c4 e'' f''' c'''' | }
  \new Staff \with { instrumentName = "Glockenspiel" } { \transposition c''' g4 e' f'' c''' | }
  \new Staff \with { instrumentName = "Guitar" } { \clef "treble_8" e,4 a, d g | }
  \new Staff \with { instrumentName = "Xylophone" } {
    f4 f' f'' d'''' | % want: range written D7 (sounding D8) is a whole tone above its highest note, C7
  }
>>
