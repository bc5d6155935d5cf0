\version "2.24.0"
% Behind music at top level, three verses; the second with a \with block.
\relative { c''4 d e f | g1 }
\addlyrics { play the game to -- day }
\addlyrics \with { fontSize = 2 } { speel het spel }
\addlyrics { joue le jeu }

{ c'4 d' }
\addlyrics { a b }
