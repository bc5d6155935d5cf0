% Lanterns over Hesk -- 1m1  First Light over Hesk
% time, key, tempo and rehearsal marks; 30 bars and a pick-up

\version "2.24.0"

global = {
  \key des \major
  \time 4/4
  \tempo "Adagio, molto rubato" 4 = 56
  \partial 4 s4 |
  s1*3 | % 1-3
  \tempo "poco rit." 4 = 48
  s1 | % 4
  \mark \default
  \tempo "a tempo" 4 = 56
  s1*4 | % 5-8
  \tempo "poco più mosso" 4 = 62
  s1*3 | % 9-11
  \tempo "rit." 4 = 52
  s1 | % 12
  \mark \default
  \tempo "Largamente" 4 = 58
  s1*3 | % 13-15
  \tempo "allargando" 4 = 50
  s1 | % 16
  \bar "||"
  \key e \major
  \mark \default
  \tempo "Più mosso" 4 = 72
  s1*5 | % 17-21
  \tempo "stringendo" 4 = 80
  s1 | % 22
  \tempo "molto rit." 4 = 60
  s1*2 | % 23-24
  \bar "||"
  \key des \major
  \mark \default
  \tempo "Tempo I" 4 = 56
  s1*3 | % 25-27
  \tempo "morendo" 4 = 44
  s1*3 | % 28-30
  \bar "|."
}
