\version "2.24.0"
chant = \relative { \clef "vaticana-do3" c'\melisma d e \melismaEnd f g f e d  \[ a b \] c  d e  }
verba = \lyricmode { Ky -- ri -- e e -- lei -- son _ a -- men }
\score { << \new VaticanaVoice = "cantus" \chant \new Lyrics \lyricsto "cantus" \verba >> }
\score { \new Staff \with { \remove "Time_signature_engraver" \remove "Bar_engraver" } { \cadenzaOn \omit Stem \relative { g'4 a b a g \breathe \bar "|" fis( g) a2 \bar "" } \bar "|." } }
