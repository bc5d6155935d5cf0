% octave: --staff low --ottava add
\version "2.24.0"
\score {
  \new Staff = "low" {
    \clef bass
    \afterGrace c,,1 { b,,16 a,,16 } |
    c1 |
    << { c'2 } \\ { \grace { a,,,8 e,, a,, } a,2 } >> r2 | % the upper voice can't go with the graces
    \grace { d,,8 e,, } d,2 r | % all from the graces on
    \clef treble
    c''''4 \afterGrace c'''' { d''''16 e'''' } r2 |
    r2 \grace { a''''8 } r2 | % nothing but a grace
    \repeat unfold 2 { c''4 \repeat tremolo 4 { c''16 c'''' } r4 } |
  }
}
