\version "2.24.0"

% Time to change between one way of playing and another. At crotchet = 100 a crotchet lasts 0.6 s.

pizz = ^\markup { \italic "pizz." }

violin = {
  \tempo 4 = 100
  c''1^"con sord."
  c''4\pizz d'' % want: prep-time bar 2, beat 1, Violin I: arco to pizzicato, no time for it (wants 0.5 s); take a quarter off
  e''^"arco" f'' % want: prep-time pizzicato to arco, 0.6 s for it (wants 1.0 s); write a rest before it
  c''2^"pizz." r % want: prep-time no time for it (wants 0.5 s); write a rest before it, or let one half change earlier
  c''1^"(pizz.) senza sord." % want: prep-time muted to open, 2.4 s for it (wants 3.0 s)
  R1
  c''1^"arco"
  c''4^"half pizz., half arco" d'' r2 % want: prep-time arco to pizzicato, no time
  R1
  c''1^"arco"
  R1
}

% Texts in a voice of nothing but skips hold for the staff; the last note may be in any voice.
viola = {
  <<
    { c'4 r2. | << { e'4 } \\ { c'4 } >> r2. | c'4 e'2. | % want: prep-time bar 3, beat 2, Viola: arco to pizzicato, no time
      c'4 r2. | c'1 | R1 | c'2 r | R1 | R1 | R1 } % want: prep-time open to muted, 2.4 s for it (wants 4.8 s)
    { s1 | s4^"pizz." s2. | s4^"arco" s2.^"pizz." | s1 | s1^"arco" | s1 | s1^\markup \italic "con sordino" | s1 | s1 | s1 }
  >>
}

% Two players on one staff: the mute of one is not that of the other.
trumpets = {
  c''1
  << { c''2 r | e''1^"con sord." | e''1 } \\ { c''1 | c''1 | c''1 } >> % want: prep-time open to muted, 1.2 s for it (wants 4.0 s)
  R1*2
  r2 c''^"open"
  R1*3
}

% A tied note is no new stroke, and a cue is not played.
cello = { c1~ | c1^"pizz." | \new CueVoice { c'1^"arco" } | c1^"pizz." | R1*6 }

% The hand in the bell moves while the note sounds.
horn = { c''4 c''-+ c''4\stopped c''-"open" | c''16-+ c''-+ c''32 c''-+ c''16 r2. | R1*8 } % want: prep-time stopped to open-bell, 0.1 s for it (wants 0.2 s) % want: prep-time open-bell to stopped % want: prep-time stopped to open-bell

drum = { c'1 | c'4^"soft sticks" r r c'^"brushes" | R1*8 } % want: prep-time usual-sticks to soft-sticks % want: prep-time soft-sticks to brushes, 1.2 s for it (wants 2.5 s)

% The mute stays on the trumpet that is laid aside; the flugelhorn is played with one, later.
second = {
  c''1^"con sord." | r1^"muta in Flugelhorn" | c''1^"senza sord." | c''1 | % want: chairs bar 3, beat 1, Trumpet 2: trumpet to flugelhorn, 2.4 s for it
  c''1^"con sord." | R1*5 | % want: prep-time bar 5, beat 1, Trumpet 2: open to muted, no time
}

\score {
  <<
    \new Staff \with { instrumentName = "Trumpet 2" } \second
    \new Staff \with { instrumentName = "Trumpets" } \trumpets
    \new Staff \with { instrumentName = "Horn in F" } \transpose f c' \horn
    \new Staff \with { instrumentName = "Vibraphone" } \drum
    \new Staff \with { instrumentName = "Violin I" } \violin
    \new Staff \with { instrumentName = "Viola" } \viola
    \new Staff \with { instrumentName = "Cello" } \cello
  >>
}
