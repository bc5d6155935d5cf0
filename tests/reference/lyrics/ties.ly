\version "2.24.0"
% Ties to the same pitch, to another one, to a rest, in chords, over a bar, to a note that comes later.
\new Staff \new Voice = "a" {
  c'4 ~ c' d' ~ e' | f' ~ r f' g' ~ | g' <c' e'> ~ <c' e'> <c' e'~> | <d' e'> f' ~ f' ~ f' |
  \set tieWaitForNote = ##t c'8 ~ e' ~ <c' e'>2. | g'4
}
\addlyrics { a b c d e f g h i j k l m n o p q r s t u }
