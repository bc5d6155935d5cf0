\version "2.24.0"
m = \relative c' { g4 a b c d r4 a g b8 r d r | r2 g, | <a d>4 <d a,> c c, | << { g4 b } \\ { e' d } >> r2 c1 R1 a1 \grace d16 c4 r \grace a16 d4 b }
\score { \new PianoStaff << \new Staff = "up" { \autoChange \m } \new Staff = "down" { \clef bass s1 } >> \layout {} }
\score { \new PianoStaff \autoChange d' \m \layout {} }
\score { \new PianoStaff \autoChange { \tuplet 3/2 { c''8 r r } r c c'' e f' s4 s a } \layout {} }
\score { \new PianoStaff << \new Staff = "up" { \clef treble } \new Staff = "down" { \clef bass \autoChange b { s4 c' r d r4 e a, r c'' } } >> \layout {} }
\score { \new PianoStaff \relative c'' { \autoChange { c4 g c g } } \layout {} }
\score { \new PianoStaff \autoChange b \relative { b'8( g) f4 ees c d  r bes, } \layout {} }
