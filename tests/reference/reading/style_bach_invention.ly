\version "2.14.2"
\header { title = "Inventio" composer = "after old style" tagline = ##f }
global = { \key f \major \time 3/4 \override Score.BarNumber #'padding = #3 }
upper = \relative c' {
  \global \clef treble
  f8 a c f f e16 d | e8 c a' g f e | \times 2/3 { d16 e f } g4 f8\trill ~ f e |
  f16 e d c b! a g f e8 <g c>-. | \repeat volta 2 { c16( d e f g a b c d e f g) } \alternative { { c4 r c, } { c'2. } }
  \grace { d16[ c] } b4 \appoggiatura c8 b4 \acciaccatura { a16 b } a4 \bar "|."
}
lower = \relative c {
  \global \clef bass
  R2. | f8 a c f f e16 d | << { e4 f g } \\ { c,2. } >> | c4*1/2 d e f g a | r2. | \set Staff.pedalSustainStyle = #'mixed
  \repeat volta 2 { f8\sustainOn g a b c d } \alternative { { e4\sustainOff r4 e, } { c2. } } g'4 g, c
}
\score { \new PianoStaff << \set PianoStaff.instrumentName = #"Cembalo  "
  \new Staff = "upper" \upper \new Staff = "lower" \lower >> \layout { } \midi { \tempo 4 = 60 } }
