\version "2.24.0"

% Breath, tongue, endurance and fading. At crotchet = 60 a crotchet lasts a second.

flute = \relative c'' {
  \tempo 4 = 60
  c1\mf~ | c1~ | c1~ | c2 r | % want: breath bar 1, beat 1, Flute: 14 s up to bar 4 without a place to breathe, a breath lasts about 10 s here
  c1~ | c1 \breathe | c1~ | c1 | % a breath mark, 8 s on each side
  c4( d e f | g f e d | c d e f | g f e d) | % want: breath 16 s up to bar 12
  c2 d e f | g1 | f1 | e1 | % between notes that are not slurred there is time for a breath
  c1\pp~ | c1~ | c1~ | c2 r | % softer it lasts longer: 15 s
  R1*4
}

tuba = \relative c, {
  c1\ff~ | c1 | r1 | r1 | % want: breath 8.0 s up to bar 2 without a place to breathe, a breath lasts about 3.0 s
  R1*21
}

clarinet = \relative c' {
  R1*4 |
  c16 c c c c c c c c4 r | % four a second: no trouble
  c32 c c c c c c c c4 r2 | % 8 a second: as fast as it goes
  \tuplet 3/2 8 { c32 c c c c c } c16 c c c c4 r4. | % want: tongue 7 tongued notes at 12.0 a second, single tonguing gives about 8.0
  \tuplet 3/2 8 { c32( c c c c c) } c4. r2 | % slurred
  c64 c c c r4.. r2 | % a flourish
  R1*16
}

oboe = \relative c'' {
  c1\n | % want: no-niente a fade to nothing, but the oboe's tone breaks off before
  c1^"al niente" | % want: no-niente
  r1 | R1*22
}

horn = \relative c' {
  R1*5
  c4 d e f | c d e f | c d e f | c d e f | c d e f | c d e f | c d e f | c d e f | % want: endurance plays 64 s up to bar 21 without a rest of a second
  c d e f | c d e f | c d e f | c d e f | c d e f | c d e f | c d e f | c d e f |
  R1*4
}

\score {
  <<
    \new Staff \with { instrumentName = "Flute" } \flute
    \new Staff \with { instrumentName = "Oboe" } \oboe
    \new Staff \with { instrumentName = "Clarinet in Bb" } { \transposition bes \transpose bes c' \clarinet }
    \new Staff \with { instrumentName = "Bass clarinet in Bb" } { \transposition bes, \transpose bes, c' { \relative c { c1\n r1 R1*23 } } }
    \new Staff \with { instrumentName = "Horn in F" } { \transposition f \horn }
    \new Staff \with { instrumentName = "Tuba" } { \clef bass \tuba }
  >>
}

% High notes of the brass: 30 s of them before a rest of 4 s.
trumpet = \relative c''' {
  \tempo 4 = 60
  a1 c a b | c r4 a2. | b1 a % want: endurance bar 1, beat 1, Trumpet in Bb: 35 s above written G5 up to bar 9 without a rest of 4.0 s; lips tire after about 30 s
  b1 | R1 | a1 b c a b a b | R1 |
  g1 g g g g g g R1
}
% Registers that can't fade: written B5 on the trumpet, D6 on the flute.
\score {
  <<
    \new Staff \with { instrumentName = "Trumpet in Bb" } { \transposition bes \trumpet b''1\n g'1\n } % want: no-niente bar 27, beat 1, Trumpet in Bb: a fade to nothing, but the trumpet's high register breaks off before
    \new Staff \with { instrumentName = "Flute" } { R1*26 d'''1\n d''1^"al niente" } % want: no-niente the flute's top register breaks off before
  >>
}

% Without a tempo nobody knows the seconds.
\score {
  \new Staff \with { instrumentName = "Flute" } \relative c'' { c1~ | c1~ | c1~ | c1~ | c1 }
}

% Low notes take more air on winds, but not in a voice: 13 s are no more than a breath and a bit for a singer.
\score {
  <<
    \new Staff \with { instrumentName = "Tenor" } { \tempo 4 = 60 \clef "treble_8" c1\mf~ | c~ | c~ | c4 r2. }
    \new Staff \with { instrumentName = "Horn in F" } { \transposition f c1\mf~ | c~ | c~ | c4 r2. } % want: breath 13 s up to bar 4 without a place to breathe, a breath lasts about 9.0 s here
  >>
}
