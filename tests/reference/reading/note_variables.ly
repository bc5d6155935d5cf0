\version "2.24.0"

% A variable that is one note: each use has a place of its own. Notes inside of music keep theirs.
note = c'4
again = \note
marked = d'8-.
tweaked = \tweak color #red e'4
chord = <c' e'>4
inside = { f'4 }
drum = \drummode { bd4 }
keep = #(define-music-function (m) (ly:music?) #{ { $m g'4 } #})
\new Staff {
  \note \again \marked \marked-> \note^"x" \tweaked \chord \inside
  \tuplet 3/2 \note << \note >> \transpose c d \note \repeat unfold 2 \note
  \grace \note e'4 \keep \note \relative \note \tag #'a \note \afterGrace \note \marked
}
<< \note \\ \marked >>
\new Staff { <\note a'>4 }
\new Staff \partCombine \note \marked
\new DrumStaff \drum
