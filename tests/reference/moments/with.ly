\version "2.24.0"
% What contexts begin with, in \with blocks of every form.
soft = \with { midiInstrument = "strings" \consists Merge_rests_engraver }
twice = \with { \soft \override Stem.thickness = #2 }
small = #(define-music-function (music) (ly:music?)
  #{ \new Staff \with { fontSize = #-2 \override StaffSymbol.staff-space = #(magstep -2) } { #music } #})
\score {
  <<
    \new PianoStaff = "piano" \with {
      instrumentName = "Piano"
      \override StaffGrouper.staff-staff-spacing.padding = #3
    } <<
      \new Staff = "up" \with {
        \soft pedalSustainStyle = #'bracket
        \omit Clef
        \numericTimeSignature
      } {
        c'4 d'
        \new Voice = "late" \with {
          \override Stem.direction = #UP
          \remove "Forbid_line_break_engraver"
        } { e' f' }
      }
      % The context is there already, so this holds for nothing.
      \context Staff = "up" \with { midiInstrument = "flute" } { g'1 }
      \new Staff \with \twice { s4 r s2 }
    >>
    \new Staff \with { autoBeaming = ##f } \with { midiInstrument = "oboe" } { c'8 8 4 2 }
    \repeat unfold 2 { \new Staff \with { \revert Stem.length instrumentName = \markup { \bold "Horn" } } { c'2 } }
    { s2 \small { c'4 c' } }
    \new DrumStaff \with { drumStyleTable = #percussion-style } \drummode { sn1 }
  >>
  \layout { }
}
\score {
  <<
    \new Staff \with { shortInstrumentName = "S." } { c'2 d' }
    \addlyrics \with { \override LyricText.font-shape = #'italic ignoreMelismata = ##t } { la la }
    \new Lyrics \with { alignAboveContext = "x" } \lyricmode { a1 }
  >>
  \layout { }
}
