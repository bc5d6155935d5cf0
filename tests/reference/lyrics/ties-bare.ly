\version "2.24.0"
% A duration alone repeats the note; a tie and a slur together.
\new Staff \new Voice = "a" { c'2 ~ 4 4 ~ | 8 d' e'4 ~ e'8( f') g'4 | c'( d' ~ d') e' | f' }
\addlyrics { a b c d e f g h i j k l m n o p q r s t u }
