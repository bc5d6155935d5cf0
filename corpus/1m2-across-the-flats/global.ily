% Lanterns over Hesk -- 1m2  Across the Flats
% 40 bars; metres as spotted to picture

\version "2.24.0"
\language "english"

global = {
  \key d \minor
  \tempo "Allegro agitato" 4 = 152
  \time 4/4
  s1*3 | % 1-3
  \time 3/4
  s2. | % 4
  \mark \default
  \time 4/4
  s1*3 | % 5-7
  \time 2,2,3 7/8
  s8*7 | % 8
  \mark \default
  \time 4/4
  s1*2 | % 9-10
  \time 3,2 5/8
  s8*10 | % 11-12
  \time 4/4
  s1*2 | % 13-14
  \time 2,2,3 7/8
  s8*7 | % 15
  \time 3/4
  s2. | % 16
  \mark \default
  \tempo "Più agitato" 4 = 160
  \time 2,2,3 7/8
  s8*28 | % 17-20
  \time 4/4
  s1*2 | % 21-22
  \time 3,2 5/8
  s8*10 | % 23-24
  \bar "||"
  \key f \minor
  \mark \default
  \tempo "Largamente, l'istesso" 4 = 152
  \time 4/4
  s1*6 | % 25-30
  \tempo "poco rit." 4 = 138
  s1 | % 31
  \time 3/4
  s2. | % 32
  \bar "||"
  \key d \minor
  \mark \default
  \tempo "a tempo, con forza" 4 = 160
  \time 3,2 5/8
  s8*5 | % 33
  \time 2,2,3 7/8
  s8*7 | % 34
  \time 3,2 5/8
  s8*5 | % 35
  \time 2,2,3 7/8
  s8*7 | % 36
  \time 4/4
  s1*4 | % 37-40
  \bar "|."
}

% the same for the players who read in another key
globalInF = \transpose f c' \global
globalInBflat = \transpose bf c' \global
