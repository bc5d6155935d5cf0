\version "2.20.0"
\include "espanol.ly"
% bandoneón y piano
bando = \relative { \key la \minor \time 4/4
  la'8-> r16 la si8 do re4-> do8 si | <la do mi>4\< <sols si mi>8-. q-.\! ~ q4 r8 mi | \repeat percent 2 { la,8.\p la16 si8-- do } |
  \ottava #1 la''8\mf sols la si do4 \ottava #0 r | <>\f \tuplet 5/4 { mi16 fa sol la sib } la4-^ la,2:32 | \repeat tremolo 8 { do32 mi } r2 \breathe | la,1\fermata }
izq = \relative do { \clef bass \key la \minor
  <la la'>4 mi'' <la,, la'> mi'' | mi,,4. mi8 \acciaccatura sols8 mi4 r | \repeat unfold 2 { la8[ mi' la mi] } | la,4-. r la'-. r | << { la4 sols sol fas } \new Voice { \voiceTwo fa2 mi } >> \oneVoice | la,1 ~ | la }
\score { \new GrandStaff << \new Staff = der \bando \new Staff = izq \izq >> \layout{} }
