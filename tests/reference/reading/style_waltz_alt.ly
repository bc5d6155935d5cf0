\version "2.24.0"
\header { title = "Walzer" }
% repeats nested; alternatives inside the body; unfolded midi
rh = \relative c'' { \time 3/4 \key a \major
  \repeat volta 2 { \partial 4 e4 | a2 gis8 fis | \repeat volta 2 { e4 cis e | \alternative { { a,2. } { a2 r4 } } } b8-. cis-. d-. dis-. e-. eis-. }
  \alternative { { fis2. | e2 s4 } { fis2.~ | \set Timing.measurePosition = #(ly:make-moment 0 4) fis4 r r } }
  \repeat percent 2 { a4 <cis, e> q } \repeat unfold 3 { \acciaccatura gis'8 a4 } \alternative { { b4 b b } { cis cis cis } } a2. }
lh = { \clef bass \partial 4 r4 \repeat unfold 8 { a,4 <e a cis'> <e a cis'> } \repeat unfold 6 { e,4 <e gis d'>2 } }
music = \new PianoStaff << \new Staff = "a" \rh \new Staff = "b" \lh >>
\score { \music \layout {} }
\score { \unfoldRepeats \music \midi { \tempo 4 = 160 } }
\score { \unfoldRepeats volta \new Staff \rh }
