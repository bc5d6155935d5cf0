\version "2.24.0"
% The score begins with a grace note, and the lyrics with it.
\new Staff \new Voice = "a" { \grace d'8 c'4 d' \grace { e'8[ f'] } g'4( a') | b' }
\addlyrics { a b c d e f }
