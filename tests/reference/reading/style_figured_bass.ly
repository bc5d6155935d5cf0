\version "2.18.2"
continuo = \relative c { \clef bass \key g \minor \time 4/4 g4 d' es c | d fis, g bes | \times 2/3 { c8 d es } d4 g,2 | }
figs = \figuremode { \override Staff.BassFigureAlignmentPositioning #'direction = #DOWN <_>4 <6 4+> <6> <7 _-> | <_+>2 s4 <6>8 <6\\> | \set Staff.useBassFigureExtenders = ##t <5 3>2 <6!> | <[7] 4 \markup "t.s.">4 r s2 \bassFigureExtendersOn <5>4*2 <6+ 4- [3]> }
solo = \relative c'' { \key g \minor g4.\trill( a8) bes4 c | \appoggiatura bes8 a4 d, g2 | es'8. d16 c8 bes a4\prall fis | g1 }
\score { \new StaffGroup << \new Staff \with { instrumentName = "Violino" } << \set Score.skipBars = ##t \solo >> \new Staff << \continuo \new FiguredBass \figs >> \context FiguredBass = "x" \figuremode { <6>1 } >> }
