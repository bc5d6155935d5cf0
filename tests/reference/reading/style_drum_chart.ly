\version "2.19.80"
up = \drummode { \voiceOne \repeat percent 4 { hh8 hh <hh sn> hhho hh hh <hh sn>16 hh hhp8 } \break
  crashcymbal4 hihat8 openhihat <cymr sn>8-> cymr <sn>16 sn tomh tomh | \grace sn8 sn4 \tuplet 3/2 { tommh8 toml tomfl } cymc2\fermata | rb8 rb cb4 r2 \mark \default }
down = \drummode { \voiceTwo \repeat percent 4 { bd4 s bd8 bd s4 } bd4 bd bd8 bd r4 bd4 r bd2 | bd8 hhp bd hhp r2 }
perc = \drummode { \repeat unfold 3 { cgh8 cgl cgho cghm r4 cab16 cab cab cab } | tri4 tamb trim wbl | guis2 gui8 guil r4 | \stemUp ss4 ss ss ss }
\score { <<
  \new DrumStaff << \set DrumStaff.drumStyleTable = #drums-style \new DrumVoice { \up } \new DrumVoice { \down } >>
  \new DrumStaff \with { drumStyleTable = #congas-style \override StaffSymbol.line-count = #2 instrumentName = #"Perc." } { \time 4/4 \perc }
  \new RhythmicStaff { \improvisationOn c4 c8 c c4 c | c2 r8 c4. | c4 4 8 16 16 4 | s1 | r1 | c1 }
>> }
