\version "2.24.0"
% A slur that is never closed, one closed that was never open, one opened twice.
\new Staff \new Voice = "a" { c'4 d') e' f' | c'( d'( e') f' | c'4 d'( e' f' | g' a' b' c'' }
\addlyrics { a b c d e f g h i j k l m n o p q r s t u }
