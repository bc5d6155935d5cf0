\version "2.24.0"
RH = \change Staff = "rh"
LH = \change Staff = "lh"
dyn = { s2.\p s2.\< s2 s4\! s2.\f }
rh = \relative c'' { \key des \major \time 3/4 \stemUp des16 f aes \LH \stemDown des,, f aes \RH \stemUp des f aes des f aes | \stemNeutral \voiceOne <aes, c ees>2 \oneVoice \once \override Staff.TimeSignature.stencil = ##f \time 2/4 r4 \time 3/4 | << { des'2. ~ | des } \\ { f,4 ges aes | <f bes>2. } \\ { r4 ees, ees | s2. } >> }
lh = \relative c { \clef bass \key des \major des2. | aes8 c ees aes c ees | <des,, des'>4 r <aes' aes'> | \arpeggioArrowUp <des, aes' f'>2.\arpeggio }
lh = \relative c { \clef bass \key des \major des2. | aes8 c ees aes c ees | <des,, des'>4 r <aes' aes'> | \arpeggioArrowUp <des, aes' f'>2.\arpeggio }
\score { \new PianoStaff \with { connectArpeggios = ##t } << \new Staff = "rh" \rh \new Dynamics \dyn \new Staff = "lh" \lh >> }
\score { \new PianoStaff << \new Staff = "up" { \autoChange { c'8 e' g b, c e g' c'' } } \new Staff = "down" { \clef bass s1 } >> }
