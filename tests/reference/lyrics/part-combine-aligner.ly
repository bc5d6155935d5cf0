\version "2.24.0"
% The manual's way for combined parts.
soprano = { c''4 c'' c'' r | e''2( d'') | c''4 r2. }
alto = { e'4 e' e' r | g'2 f'4( g') | e'4 r2. }
aligner = { c''4 c'' c'' r | e''2( d'') | c''1 }
\new ChoirStaff <<
  \new Staff <<
    \partCombine \soprano \alto
    \new NullVoice = "aligner" \aligner
  >>
  \new Lyrics \lyricsto "aligner" { One two three, long word. }
>>
