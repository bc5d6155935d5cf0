\version "2.24.0"
m = { \repeat volta 2 { \repeat percent 2 { c'1 } \repeat tremolo 4 { c'16 d' } f'2 \repeat segno 2 a'1 } \alternative { { d'1 } { e'1 } } }
\score { \m }
\score { \unfoldRepeats \m }
\score { \unfoldRepeats percent \m }
\score { \unfoldRepeats tremolo \m }
\score { \unfoldRepeats volta \m }
\score { \unfoldRepeats percent,tremolo \m }
