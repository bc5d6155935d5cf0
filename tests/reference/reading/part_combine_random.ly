\version "2.24.0"
\score { \new Staff { s2  \partCombineDown #'(2 . 9) { <b' e>2
  a'2
  b4 b'4~
  <a f>2
  R1 } { <b' e>2
  a'2
  b4 b'4~
  <a f>2
  R1 } } \layout {} }
\score { \new Staff { \grace s8  \partCombine #'(0 . 12) { f''8 \grace d16 f8 g'4 f''2
  g'8 a4 f''8
  <b b>4 a'8~ d''8
  b4 f''8 f'8
  g8 << e'2 { \skip 16 \key c \major } >> \appoggiatura b'16 e'4 r8
  b2 } { f''8 \grace d16 f8 g'4 f''2
  g'8 a4 f''8
  <b b>4 a'8~ a''8
  \tuplet 3/2 { g'8 r g'' } \afterGrace c''4 { g'16 }
  g8 << e'2 { \skip 16 \key c \major } >> \appoggiatura b'16 e'4 r8
  r2 } } \layout {} }
\score { \new Staff { \grace s8  \partCombineDown #'(-1 . 5) { d'2
  a'4 c''8 \once \partCombineForce #'apart g''8 c'4~ s4\<
  a8 \afterGrace d'4 { e'16 } g8
  c4 a4 d8\p d''4 d''8
  c4 <f a'>4\! } { f'2
  a'4 c''8 \once \partCombineForce #'apart g''8 c'4~ s4\<
  a8 \afterGrace d'4 { e'16 } g8
  c4 a4 d8\p d''4 d''8 } } \layout {} }
\score { \new Staff { \grace s8  \partCombine #'(2 . 9) { <b'' f'>4 g'4
  a'8 << c'4 { \skip 16 \set x = 1 } >> a''8
  \slashedGrace d16 e'4^"x" s8 d'4 b8[ b'4
  \skip 8 a''4 a'8
  f'8 \tuplet 3/2 { b'8 e' c' } r8
  b'8\! r8 c'8 f'8 } { d2
  a'8 << c'4 { \skip 16 \set x = 1 } >> f''8
  c''4 b4~
  \skip 8 a''4 a'8
  r2
  b'8\! r8 c'8 f'8 } } \layout {} }
\score { \new Staff {  \partCombineDown #'(0 . 12) { \afterGrace b'4 { f'16 } f'4
  d'4-. e'4
  d8 <c' a'>8 \once \partCombineForce #'apart a''8 c8(
  \appoggiatura b16 c2\p
  g'8] b'8 g4 r4 a'4 } { \afterGrace b'4 { f'16 } f'4
  r4 <c'' a''>8 d'8
  d8 <c' a'>8 \once \partCombineForce #'apart a''8 c8(
  \appoggiatura b16 c2\p
  g'8] b'8 g4 r4 a'4 } } \layout {} }
\score { \new Staff { s2  \partCombine #'(0 . 12) { a'2
  R2
  R2
  e''4\( b'4
  <g' a>4 e'8 e'8 } { a'2
  R2
  R2
  e''4\( b'4
  <g' a>4 e'8 e'8 } } \layout {} }
\score { \new Staff { \grace s8  \partCombine { R1
  c'2\! g'4 <b'' f''>8 e8
  r8 r4 g'8\!
  R2
  s4\f <b' b''>8\! \once \partCombineChords g''8 } { R1
  a''2
  r8 r4 g'8\!
  R2
  s4\f <b' b''>8\! \once \partCombineChords g''8 } } \layout {} }
\score { \new Staff { s2  \partCombine { f4 a'8 g''8
  r8 r4 d''8
  <a' f''>4 b''8 r8
  f'8( <c'' c''>4 \repeat unfold 2 { g8 } b'8 d''8 \skip 8 } { \partCombineApart a'4 r4
  r8 r4 d''8
  <g' f''>4 b''8 r8 } } \layout {} }
\score { \new Staff { s2  \partCombineUp { << { c'4 } \\ { c'4 } >> <f b'>8\) b''4 \acciaccatura e'16 d''8 b'8 a'8
  g''4 g'8 a'8
  \acciaccatura e16 e''8 e'4 << e'8 { \skip 16 \bar "" } >> g'8-. << { d8 } \\ { e8 } >> \new Voice { b'4 }
  e'8 a4\< s8 r4 g'4
  a'4 e'8 g'8
  R2
  R2 } { << { c'4 } \\ { c'4 } >> <f b'>8\) b''4 \acciaccatura e'16 d''8 b'8 a'8
  g''4 g'8 a'8
  R1
  e'8 a4\< s8 r4 g'4
  a'4 e'8 g'8
  R2 } } \layout {} }
\score { \new Staff {  \partCombine { e'4 f'8 c''8
  r4 \repeat unfold 2 { d8 }
  g''8 f'4 r8
  b''4 << g'4 { \skip 16 \omit Staff.Clef } >>
  a'8 g4 e8
  r4 r4
  << { c''4 } \\ { e''4 } >> a'2 g4\) } { e'4 f'8 c''8
  r4 \repeat unfold 2 { d8 }
  R2
  b''4 << g'4 { \skip 16 \omit Staff.Clef } >>
  \repeat volta 2 { f'4 } c'4
  r2
  \grace b16 e'8 g'8-. <c a''>8) c8 } } \layout {} }
\score { \new Staff {  \partCombine #'(2 . 9) { c''2
  g''8 c'4 <e' g>8
  e'4 r8 a'8[
  R2
  a8 c8 r4
  r4 r8 s8\f
  <f g''>8) \acciaccatura g''16 g'4 r8 } { c''2
  g''8^"x" << f8 { \skip 16 \tag #'x s16 } >> b'8 g'8
  r2
  R2
  a8 c8 r4
  \skip 2
  b'2 } } \layout {} }
\score { \new Staff {  \partCombine #'(-1 . 5) { e'4 d''8^"x" \partCombineApart a'8
  << { e''4 } \\ { a'4 } >> << { e'4 } \\ { d'4 } >>
  R1
  \new Voice { e'4 } d'8 r8
  d4 f'8 f'8
  \tuplet 3/2 { e''8 r a } f'4
  \afterGrace d2 { d'16 }
  e'4 g4 <b' d'>4 \skip 4 } { e'4 d''8^"x" \partCombineApart a'8
  d4 f''4
  r2
  \new Voice { e'4 } g'8 r8
  d4 f'8 f'8
  \partCombineSoloII b''4 b'8[ <d e''>8\pp
  \afterGrace d2 { d'16 } } } \layout {} }
