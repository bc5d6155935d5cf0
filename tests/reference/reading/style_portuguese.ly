\version "2.24.0"
\language "portugues"
\score { { do'4 dos' reb' mibb' | fass'2 la'? | } }
