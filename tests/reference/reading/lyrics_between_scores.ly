\version "2.24.0"
\new Staff { c'4 } \addlyrics { la4 la8 } { c' }
