\version "2.24.0"
% A soloist, and one player of a section, may go to the top that some reach; a section is asked about it.
\score {
  <<
    \new Staff \with { instrumentName = "Violino principale" } {
      f''''1 | a'''' | bes'''' | % want: range bar 3, beat 1, Violino principale: sounding B flat 7
      R1 |
    }
    \new Staff \with { instrumentName = "Violin II" } {
      f''''1 | % want: range bar 1, beat 1, Violin II: sounding F7 (and 1 more note, bars 1, 4) is a semitone above E7, the usual top (some reach A7)
      f''''1^"solo" | f'''' | f''''^"tutti" |
    }
    \new Staff \with { instrumentName = "Alto solo" } { e1 | f'' | R1*2 | }
    \new Staff \with { instrumentName = "Alto" } { e1 | R1*3 | } % want: range sounding E3 is a minor third below G3
    \new Staff \with { instrumentName = "Double bass solo" } { \clef bass c,1 | R1*3 | } % want: range written C2 (sounding C1)
  >>
}
