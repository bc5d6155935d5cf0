\version "2.24.0"
words = { \mark "A" \once \override Score.RehearsalMark.self-alignment-X = #LEFT }
right = { \key g \major \repeat volta 2 { \words g'4\p \repeat unfold 2 { a'8\< \ottava #1 b'\! } } \alternative { { \ottava #0 c''2\fermata } { \breathe d''2 \mark \default } } \fine }
left = { \repeat percent 2 { g4-> \set Staff.fontSize = #-1 g2. } \afterGrace c'1 { \override Flag.stroke-style = #"grace" d'16^"last" } \caesura }
<<
  \new Staff << \right { s2 \break s1 s2\sustainOn \time 3/4 s2\sustainOff } >>
  \new Staff \keepWithTag #'full { \left \tag #'part { \mark "no" } \tag #'full { \textMark "yes" c'4 \revert Flag.stroke-style } }
  \new Dynamics { s1\mf \tempo "Presto" s2\cresc s2\f \overrideProperty Score.NonMusicalPaperColumn.page-break-permission ##f }
>>
