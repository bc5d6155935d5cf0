\version "2.24.0"
loud = \markup { \bold "ff" }
sharply = { \override Stem.color = #red \set fontSize = #1 }
upper = \relative c'' {
  \mark \default c4 \textMark "A tempo" d8 \ottava #1 e \once \override NoteHead.color = #blue f4 g \ottava #0 |
  \voiceOne \stemUp \sharply a4\sustainOn b\sustainOff^\loud \bar "||" \break \stemNeutral c <>\p^"solo" d
  \tuplet 3/2 { \tweak color #red c8 \set Staff.midiInstrument = "oboe" d \breathe e } \tempo "Lento" 4 = 60 <c \tweak color #red e>2-\tweak color #red -. r4 \unset fontSize
  \grace { \slurDown d8( } \mark "X" c4) \repeat unfold 2 { \dynamicUp b4\< \revert Stem.color a\! } << { \stemUp c4 } \\ { \stemDown e,4 } >> \tag #'score { \noBreak c'4 } \pageBreak
  \clef bass \key d \major \time 3/4 c,2. \sectionLabel "Coda" \fine
}
\new PianoStaff \with { instrumentName = "Piano" } << \new Staff = "up" \upper \new Staff = "down" { \clef bass \voiceTwo c4 \change Staff = "up" \hideNotes d \unHideNotes \change Staff = "down" \cadenzaOn e2 \cadenzaOff \accidentalStyle modern f4 } >>
