\version "2.24.0"
% Lyrics that follow a staff of several voices: a melisma is where all of them have one.
\new Staff = "choir" <<
  \new Voice { c'2 r4 d'( e' f'8 d') g'4 }
  \new Voice { c''4( d'') e''8 e'' f''~ f'' f'' g'' }
>>
\addlyrics { a b c d e f g h i j }
