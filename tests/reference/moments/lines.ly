\version "2.24.0"
<<
  \new ChoirStaff << \new Staff << \new Voice = "one" { \set Staff.instrumentName = "Soprano" \stemUp c''4 \stemDown d'' <>\ff^"all" \stemUp e''2 } \new Voice { \stemDown c'2 \stemUp d'2 } >> >>
  \new PianoStaff << \new Staff = "r" << { \stemUp c''2 d''2 } \\ { \stemDown e'4 \stemUp f'4 \change Staff = "l" \stemDown g4 \change Staff = "r" \stemUp a'4 } >> \new Staff = "l" { \clef bass \stemUp c1 } >>
  \new Staff \partCombine { \ottava #0 c''4 \unset fontSize d''4 e''2 } { \key f \major c'4\f d'4 \bar "!" e'2 }
  { \stemUp \grace { \stemDown g'8 } \stemUp c'1\trill }
>>
