\version "2.24.0"
\layout { \context { \Voice \consists "Horizontal_bracket_engraver" } }
manual = \context Staff = "one" \relative c'' << \new Voice { \voiceOne c4 d e f } \new Voice { \voiceTwo c,2 b } >>
manualB = \context Staff = "one" \relative c'' { g4 f e d \context Voice = "x" { c1 } << { \context Voice = "x" d2 d } \context Voice = "y" { \voiceTwo b1 } >> }
two = \context Staff = "two" { \clef bass c4 e g c' | \repeat "unfold" 2 { e2 d } | c1 }
ped = \context Staff = "ped" \relative c, { \clef bass c1 g' \tieDown c,~ c }
\score { << \new PianoStaff << { \manual \manualB } \two >> \ped \context Staff = "ped" { s1 s2 s2^\markup "Ped." } >> }
