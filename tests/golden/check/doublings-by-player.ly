\version "2.24.0"
% "2. muta in Piccolo" is for one player of the staff: voices, "1.", "a 2" and names tell whose notes they are.
\score {
  <<
    \new Staff \with { instrumentName = "Flutes 1, 2" } {
      \tempo 4 = 60
      << { c''1 } \\ { d'1 } >> | R1^"2. muta in Piccolo" | R1*3 |
      << { c'1 } \\ { c'1 } >> | % want: range bar 6, beat 1, Flutes 1, 2: written C4 (sounding C5) is a whole tone below the piccolo's lowest note, D4
      << { R1 } \\ { c'1 } >> | % want: range bar 7, beat 1
      << { c'1 } \\ { R1 } >> |
      c'1^"a 2" |
      c'1^"Picc." | % want: range bar 10, beat 1, Flutes 1, 2: written C4 (sounding C5)
      c'1^"Fl." |
      c'1^"2." | % want: range bar 12, beat 1, Flutes 1, 2: written C4 (sounding C5)
      R1*4^"2. muta in Flauto" |
      << { c'1 } \\ { c'1 } >> |
    }
    % What the English horn's \transposition says fits the one who has it.
    \new Staff \with { instrumentName = "Oboes 1, 2" } {
      << { c''1 } \\ { d'1\ppp\trill } >> | R1^"2. to English Horn" | R1*3 |
      \transposition f
      << { R1 } \\ { b1 } >> |
      << { R1 } \\ { a1 } >> | % want: range bar 7, beat 1, Oboes 1, 2: sounding D3 (written A3) is a whole tone below the english horn's lowest note, E3
      R1*10 |
    }
    % The second bassoon's notes go deeper than a bassoon.
    \new Staff \with { instrumentName = "Bassoons 1, 2" } {
      \clef bass
      c1 | R1^"2. muta in Contrabassoon" | R1*4 |
      << { c1 } \\ { c,1 } >> |
      << { R1 } \\ { c,,1 } >> | % want: range bar 8, beat 1, Bassoons 1, 2
      << { c,,1 } \\ { R1 } >> | % want: range bar 9, beat 1, Bassoons 1, 2
      R1*8 |
    }
  >>
}
