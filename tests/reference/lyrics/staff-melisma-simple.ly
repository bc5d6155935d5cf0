\version "2.24.0"
\new Staff = "choir" { c'4( d') e' f'~ f' g' \autoBeamOff a'8[ b'] c''4 }
\addlyrics { a b c d e f g h }
