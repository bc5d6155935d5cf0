\version "2.24.0"

% One voice that goes from staff to staff: a repeat, a grace note, voices, a tuplet, a chord of both hands, a pedal.
global = { \key es \major \time 4/4 }
harp = \relative c {
  \tempo 4 = 96
  es,16 bes' es g bes es g bes es bes g es bes g es bes | % 1
  \repeat volta 2 { es,8\sustainOn bes' es g bes es g bes\sustainOff } |
  \grace { es,,16 } es'8 es' << { g4 } \\ { es,4 } >> \tuplet 3/2 { c8 es g } c4\p |
  <es,, bes' es g bes es>2\arpeggio r2 |
  R1 |
  c'''4( d) <c es>2 |
}

\score {
  <<
    \new Staff = "harp1" \with { instrumentName = "Harp" } << \global \harp >>
  >>
}
