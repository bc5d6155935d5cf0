\version "2.12.3"
\include "english.ly"
% madrigal
timeA = { \override Staff.TimeSignature #'style = #'() \time 4/2 \key f \major }
ficta = { \once \set suggestAccidentals = ##t }
cantus = \relative c'' { \timeA \set Score.measureLength = #(ly:make-moment 2 1) f\breve | r1 c2. d4 | bf2 a g1 | \ficta fs\breve | g1. a2 | bf2 c4 bf a2 g | f\longa*1/2 \bar "|." }
tenor = \relative c' { \timeA \clef "G_8" f,1 c' | d2 ef d1 | R1*2 | d2. ef4 \times 2/3 { d1 c bf } | a2 bf c f, | f\longa*1/2 }
verba = \lyricmode { A -- mor __ _ mi -- o bel tes -- o -- ro __ }
\score { \new StaffGroup << \new Staff << \new Voice = "can" \cantus >> \new Lyrics \lyricsto "can" \verba \new Staff \new Voice = "ten" { \tenor } \new Lyrics \lyricsto ten \verba >>
  \layout { \context { \Score \override BarNumber #'transparent = ##t } \context { \Staff \consists "Custos_engraver" } } }
