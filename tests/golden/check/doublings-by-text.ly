\version "2.24.0"
% A text changes the instrument by which notes are judged: for all players of a staff, or for those whom it names.
\score {
  <<
    \new Staff \with { instrumentName = "Oboe 2" } {
      \tempo 4 = 60
      a1 | % want: range bar 1, beat 1, Oboe 2: sounding A3
      e'1^"to English Horn" | R1*4 |
      \transposition f
      b1^"al niente" | % want: no-niente bar 7, beat 1, Oboe 2: a fade to nothing, but the english horn's tone
      a1 | % want: range bar 8, beat 1, Oboe 2: sounding D3 (written A3) is a whole tone below its lowest note, E3
      R1*4 | R1^"muta in Ob." | R1*3 |
      \transposition c'
      a1 | % want: range bar 17, beat 1, Oboe 2: sounding A3
    }
    \new Staff \with { instrumentName = "Flutes 1, 2" } {
      << { c''1 | c'' } \\ { a'1 | a'^"2. muta in Alto Flute" } >> R1*4 |
      << { c''1 } \\ { a } >> |
      << { a1 } \\ { a } >> | % want: range bar 8, beat 1, Flutes 1, 2: sounding A3
      R1*9 |
    }
    % The change is not told where \transposition follows before the first note.
    \new Staff \with { instrumentName = "Clarinet 1 in Bb" } {
      \transposition bes
      e'1 | R1^"muta in A" | R1*4 | \transposition a e'1 | R1*10 |
    }
    % A piccolo needs less air than a flute.
    \new Staff \with { instrumentName = "Flute 3" } {
      c''1\mf~ | c''1~ | c''1~ | c''2. r4 | % want: breath 15 s up to bar 4 without a place to breathe, a breath lasts about 10 s here
      R1^"muta in Piccolo" | R1*3 |
      f''1\mf~ | f''1~ | f''1~ | f''2. r4 |
      R1 |
      R1*4 |
    }
  >>
}
