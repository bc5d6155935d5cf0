\version "2.24.0"
lute = { \time 4/4 <d a\6 d'>4 f'8 e' d' cis'16 d' e'4 | \repeat volta 2 { a,8\4 cis e a <cis' e' a'>2 } | \set TabStaff.minimumFret = #5 \set TabStaff.restrainOpenStrings = ##t c'8 d' e' f' \tabFullNotation g'2 | <e' \harmonic>4 \harmonicByFret #12 e4 \harmonicByRatio #1/2 <e>4 c'8\glissando g' }
\score { \new StaffGroup << \new Staff { \clef "G_8" \lute } \new TabStaff \with { stringTunings = #guitar-drop-d-tuning tablatureFormat = #fret-letter-tablature-format } \lute >> }
