\version "2.24.0"
% A word that names one player of a staff of winds is for that player's notes, and the time to change is counted from
% the last note that the same player has played.
\score {
  <<
    \new Staff \with { instrumentName = "Trumpets 1, 2" } {
      \tempo 4 = 120
      c''1^"1." | c''1 | c''1^"2. con sord." | c''1^"1." | c''1^"2." |
      c''1^"2. senza sord." | % want: prep-time bar 6, beat 1, Trumpets 1, 2: muted to open, no time for it
      c''1^"1. con sord." |
      c''1^"a 2" | % the second one is open
      c''1^"a 2 senza sord." | % want: prep-time bar 9, beat 1, Trumpets 1, 2: muted to open, no time for it
      R1*7 |
    }
    % What is said in a rest is for the notes of that player in whatever voice they stand.
    \new Staff \with { instrumentName = "Horns 3, 4 in F" } {
      \transposition f
      << { c''1 } \\ { e' } >> | R1*3^"4. con sord." |
      << { c''1 } \\ { e' } >> | c''1^"3." |
      c''1^"4." | % not yet open, not newly muted
      R1^"senza sord." | % for both
      c''1^"4." | % want: prep-time bar 9, beat 1, Horns 3, 4 in F: muted to open, 2.0 s for it
      c''1^"3." |
      R1*6 |
    }
    % Over several notes it names one of those who play.
    \new Staff \with { instrumentName = "Trombones 1, 2" } {
      \clef bass
      << { e'1^"1. con sord." } \\ { c' } >> | <c' e'> |
      <c' e'>^"2. con sord." | % want: prep-time bar 3, beat 1, Trombones 1, 2: open to muted, no time for it
      <c' e'> |
      R1*12 |
    }
    % One text may speak to two of them.
    \new Staff \with { instrumentName = "Trumpets 3, 4" } {
      <g' c''>1 |
      <g' c''>^"1. con sord., 2. flz." | % want: prep-time bar 2, beat 1, Trumpets 3, 4: open to muted, no time for it
      R1*3^"1. senza sord., 2. con sord." |
      c''1^"1." | % four bars were enough for both
      c''1^"2." |
      R1*3^"(1., 2. senza sord.)" |
      <g' c''>1^"a 2" | <g' c''> | R1*4 |
    }
  >>
}

% What one player never takes back is open, whatever the other one does.
\score {
  \new Staff \with { instrumentName = "Trumpets 1, 2" } {
    \tempo 4 = 120
    <g' c''>1 | R1*4 |
    R1*4^"1. con sord." | % want: technique-open bar 6, beat 1, Trumpets 1, 2: "1. con sord." is never taken back, and 13 bars with notes follow
    R1*4^"2. con sord." |
    <g' c''>1 | R1*4^"2. senza sord." |
    \repeat unfold 12 <g' c''>1 |
  }
}
