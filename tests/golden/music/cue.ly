\version "2.24.0"
\include "part.ily"
words = \lyricmode { A -- men, a -- _ men. }
global = { \key d \major \time 3/4 \tempo "Slow" 4 = 60 s2. \mark \default \repeat volta 2 { s2. } \key d \minor s2. }
singer = \relative c'' { d4 e fis | a2 g4 | f2. }
beat = \drummode { bd4 sn8 sn hh4 | bd2. }
\score { <<
  \new Staff \with { instrumentName = "Soprano" } \new Voice = "s" << \global \singer >>
  \new Lyrics \lyricsto "s" \words
  \new DrumStaff \with { instrumentName = "Drums" } { \time 3/4 \beat }
  \new Staff \with { instrumentName = "Flute" } \flute
>> }
