\version "2.18.0"
\include "aria_defs.ily"
\include "aria_music.ily"
\score { << \new StaffGroup \with { \override SpanBar.transparent = ##f } <<
   \new Staff \with { instrumentName = \markup \center-column { "Violino" "I" } } { \tempoMarks \vI }
   \new Staff \with { instrumentName = "Violino II" } \vII >>
 \new Staff \with { instrumentName = "Contessa" \consists "Ambitus_engraver" } { \new Voice = "aria" { \autoBeamOff \aria } }
 \new Lyrics \lyricsto "aria" \testo
 \new Staff \bassi >> }
