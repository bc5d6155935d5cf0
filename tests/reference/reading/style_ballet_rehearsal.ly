\version "2.24.0"
% structure kept in a skip line, shared by all staves; marks; multi-bar rests; unset
struct = { \time 2/4 \mark \default s2*4 \time 6/8 \mark #5 s2.*2 \bar "||" \once \override Score.RehearsalMark.self-alignment-X = #LEFT \mark "Trio" \repeat volta 2 { s2.*2 } \textMark "x" \textEndMark "D.C." \bar "|." }
fl = \relative c''' { \compressEmptyMeasures R2*2 | g8 r g r | \set Staff.midiMinimumVolume = 0.2 R2 | \unset Staff.midiMinimumVolume c8 d e f e d | R2. | \repeat volta 2 { c4. r | r4. c } }
vc = { \clef bass \repeat unfold 4 { c8-. g-. c-. g-. } \repeat unfold 2 { c4 c8 g4 g8 } \repeat volta 2 { R2.*2 } }
timp = { \clef bass c4:32 r | R2 | \repeat percent 2 { c8 c g, g, } | \repeat percent 2 { c4. g, }  \repeat volta 2 { r4. c8 r c | c2.:32\fermata } }
timp = { \clef bass c4:32 r | R2 | \repeat percent 2 { c8 c g, g, } | \repeat percent 2 { c4. g, } \repeat volta 2 { r4. c8 r c | c2.:32\fermata } }
\score { << \new Staff << \struct \fl >> \new Staff << \struct \vc >> \new Staff << { \struct } \timp >> >> }
\score { \new Staff << \killCues \fl \removeWithTag #'score \struct >> }
