\version "2.10.33"
\paper { between-system-space = 1.5\cm }
etude = \relative c'' {
  \set Staff.midiInstrument = "violin" \key e \major \time 2/4
  \override Fingering #'direction = #up
  e16-1^\upbow dis e fis gis-0 a b cis | \times 2/3 { dis8^4 e fis } gis4\startTextSpan | \times 4/6 { a16 gis fis e dis cis } b8\stopTextSpan b | <e, b' e>8:16 q: <b gis'>:32 r16. e32 |
  \repeat tremolo 4 { e16 gis } | c4\open\harmonic c'\flageolet | \stemUp \slurUp e,8(\downbow e,) e'(\upbow e,) \stemNeutral | \appoggiatura { \stemUp dis'16[ e] \stemNeutral } e2 | \bar "|." }
\score { \etude \layout { ragged-last = ##t indent = 1.0\in } }
