% octave: --staff low --ottava add
\version "2.24.0"
\score {
  \new Staff = "low" {
    \clef bass
    \ottava -1 \afterGrace c,,1 { b,,16 a,,16 } \ottava 0 |
    c1 |
    << { c'2 } \\ { \grace { a,,,8 e,, a,, } a,2 } >> r2 | % the upper voice can't go with the graces
    \ottava -1 \grace { d,,8 e,, } d,2 \ottava 0 r | % all from the graces on
    \clef treble
    \ottava 1 c''''4 \afterGrace c'''' { d''''16 e'''' } \ottava 0 r2 |
    r2 \grace { a''''8 } r2 | % nothing but a grace
    \repeat unfold 2 { c''4 \ottava 1 \repeat tremolo 4 { c''16 c'''' } \ottava 0 r4 } |
  }
}
