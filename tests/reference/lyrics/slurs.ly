\version "2.24.0"
% One behind the other, on chords, phrasing slurs (which don't count), slurs with names, over a rest.
\new Staff \new Voice = "a" {
  c'4( d')( e') f' | <c' e'>( <d' f'> <e' g'>) f' | c'\( d' e' f'\) | c'\=1( d'\=2( e'\=1) f'\=2) |
  c'4( r d') e' | c'( d' | r e') f' ( | g'2) c'
}
\addlyrics { a b c d e f g h i j k l m n o p q r s t u }
