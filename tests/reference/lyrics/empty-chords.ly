\version "2.24.0"
% What hangs on an empty chord counts for the moment.
\new Staff \new Voice = "a" { c'4 <>( d' e'<>) f' g' <>\melisma a' b' <>\melismaEnd c'' d''( <>) e''4 f'' }
\addlyrics { a b c d e f g h i }
