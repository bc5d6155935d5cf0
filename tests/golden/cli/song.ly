\version "2.24.0"
\score {
  <<
    \new Staff = "song" \new Voice = "soprano" { \time 3/4 \partial 4 c''4 | d''2( e''4) | f''4 r e''8( d'') | c''2. }
    \new Lyrics = "first" \lyricsto "soprano" { Sing __ the _ song~of "a b" }
    \new Lyrics \lyricsto "soprano" { \set stanza = "2." And -- then \markup \italic soft -- ly }
    \new Lyrics \lyricmode { \skip 4 hum2. }
  >>
}
