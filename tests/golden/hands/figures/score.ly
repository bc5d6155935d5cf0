% hands: --staff Harp
\version "2.24.0"

% What each kind of figure becomes: repeats, tremolo, graces, tags, tuplets, voices, cadenza, fermata, glissando.
hp = \relative c {
  \key es \major \time 6/8 \tempo 4. = 72 \partial 8 es8 |
  \repeat unfold 2 { es,8 bes' es g bes es } |
  \repeat tremolo 12 { <es, g>32 <c' es> } |
  \acciaccatura { d,8 } es,,4.~ es8 <g'' bes es>8 q |
  \tag #'part { \ottava 1 es'''8( d c) \ottava 0 bes4. } \tag #'score { es8( d c) bes4. } |
  \times 2/3 { es,,,8 bes' es } g8 bes4 es8 |
  << { r8 g bes es bes g } \\ { es,4. bes } \\ { s4. g'4. } >> |
  \repeat volta 2 { es,,8[ bes' es g bes es] | } \alternative { { bes,4. r } { es2. } } |
  \repeat percent 3 { es,8 bes' es g bes es } |
  \grace { es,,16 bes' es g } bes'2.\fermata |
  es,,8.\< bes'16 es g bes es g\! r8. \bar "||" \time 4/4
  <es,, bes'>1\arpeggio\sustainOn | <es' g bes es>2\laissezVibrer\sustainOff bes,,8\harmonic es' g bes |
  \cadenzaOn es,16 bes' es g bes es g es bes g es bes \cadenzaOff \bar "|" |
  R1*2 | es,4-1 bes'-2 es-3 g-4 |
  \afterGrace es,,1 { bes''16 g } |
  es,,4 \glissando es''' r2 \bar "|."
}
\score { \removeWithTag #'part \new Staff \with { instrumentName = "Harp" } \hp \layout { } \midi { } }
