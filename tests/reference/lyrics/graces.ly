\version "2.24.0"
% Grace notes take no syllable, and their slur is no melisma.
\new Staff \new Voice = "a" {
  c'4 \grace d'8 e'4 \appoggiatura f'8 e'4 \acciaccatura { d'16 e' } f'4 |
  \grace { c'16( d' } e'4) f' \grace g'8 r4 a'( | \grace b'8 c''4 d'') e'' \afterGrace f''4 { e''16 d'' } |
  g'4 ~ \grace a'8 g'4 c'2
}
\addlyrics { a b c d e f g h i j k l m n o p }
