\version "2.24.0"
\paper { indent = 0 }
changes = \chordmode { s4 | c1:maj7 | a:m7.5- | d2:m7 g:7.9+ | c:6 ees:dim7 | \repeat volta 2 { f1:maj9 | bes:13.11+ } | c1:6.9/g }
tune = \relative c'' { \partial 4 g8 a | c4. e8~ e2 | \tuplet 3/2 { ees4 d c } bes8 a4. | d16 e f8~ f4 aes8 g f d | e2 r8 fis,( ges4) |
  \repeat volta 2 { a1~ | a2 \deadNote e8 \parenthesize f r4 } | g2\glissando\bendAfter #-4 <c, e a d>\startTrillSpan r\stopTrillSpan }
\score { << \new ChordNames { \set chordChanges = ##t \changes } \new Staff { \key c \major \override NoteHead.style = #'slash \hide Stem s4 \undo \hide Stem s2 } \new Staff \tune
 \new FretBoards { \chordmode { \partial 4 s4 c1 a:m d:m g:7 } } \new TabStaff \tune >> }
