% Lanterns over Hesk -- 1m3  The Crossing
% 34 bars; A is played twice

\version "2.24.0"
\language "nederlands"

global = {
  \key g \minor
  \time 12/8
  \tempo "Andante, like a barcarole" 4. = 60
  s1.*4 | % 1-4
  \mark \default
  \repeat volta 2 {
    s1.*4 | % 5-8
  }
  s1.*2 | % 9-10
  \time 6/8
  \tempo "poco rit." 4. = 52
  s2. | % 11
  \mark \default
  \time 12/8
  \tempo "a tempo, con moto" 4. = 66
  s1.*7 | % 12-18
  \time 9/8
  \tempo "allargando" 4. = 60
  s8*18 | % 19-20
  \bar "||"
  \key g \major
  \mark \default
  \time 12/8
  \tempo "Largamente" 4. = 56
  s1.*7 | % 21-27
  \time 6/8
  \tempo "rit." 4. = 48
  s2. | % 28
  \bar "||"
  \mark \default
  \time 12/8
  \tempo "Tempo I, calando" 4. = 54
  s1.*6 | % 29-34
  \bar "|."
}
