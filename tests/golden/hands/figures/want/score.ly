% hands: --staff Harp
\version "2.24.0"

% What each kind of figure becomes: repeats, tremolo, graces, tags, tuplets, voices, cadenza, fermata, glissando.
hpRight = \relative c {
  \key es \major \time 6/8 \tempo 4. = 72 \partial 8 \clef bass r8 |
  \repeat unfold 2 { r4. g'8 bes es } |
  \repeat tremolo 12 { <es, g>32 <c' es> } |
  \acciaccatura { d,8 } r4. r8 \clef treble es'8 es |
  \tag #'part { \ottava 1 es''8( d c) \ottava 0 bes4. } \tag #'score { es8( d c) bes4. } |
  r4. bes,4 es8 |
  r8 g bes es bes g |
  \repeat volta 2 { r4. r8 bes,, es | } \alternative { { R2. } { R2. } } |
  \repeat percent 3 { r4. g,8 bes es } |
  bes'2.\fermata |
  r4. bes16 es g r8. \bar "||" \time 4/4
  R1 | <g, bes es>2\laissezVibrer r2 |
  \cadenzaOn r8 r16 g bes es g es r4 \cadenzaOff \bar "|" |
  R1*2 | R1 |
  R1 |
  R1 \bar "|."
}

hpLeft = \relative c {
  \key es \major \time 6/8 \partial 8 \clef bass es8 |
  \repeat unfold 2 { es,8 bes' es r4. } |
  R2. |
  es,,4.~ es8 <g'' bes>8 <g bes> |
  \tag #'part { r r r r4. } R2. |
  \times 2/3 { es8 bes' es } g8 r4. |
  << { es4. bes } \\ { s4. g'4. } >> |
  \repeat volta 2 { es,,8 bes' es g r8 r | } \alternative { { bes,4. r } { es2. } } |
  \repeat percent 3 { es,8 bes' es r4. } |
  \grace { es,16 bes' es g } R2.\fermata |
  es8.^\< bes'16 es g r8 r8\! r \time 4/4
  <es, bes'>1\arpeggio\sustainOn | es'2\laissezVibrer\sustainOff bes,,8\harmonic es' g bes |
  \cadenzaOn es,16 bes' es r16 r4 bes'16 g es bes \cadenzaOff |
  R1*2 | es,4-1 bes'-2 es-3 g-4 |
  \afterGrace es,,1 { bes''16 g } |
  es,,4 \glissando es''' r2
}
\score { \removeWithTag #'part \new PianoStaff \with { instrumentName = "Harp" } <<
  \new Staff \hpRight
  \new Staff \hpLeft
>> \layout { } \midi { } }
