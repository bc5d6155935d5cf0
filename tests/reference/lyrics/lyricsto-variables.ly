\version "2.24.0"
% The words in variables, in several ways; a voice that is not there.
melody = { c'4 d'( e') f' }
words = \lyricmode { one two three }
more = \lyricmode { uno due \set stanza = "2." tre }
<<
  \new Voice = "a" \melody
  \new Lyrics \lyricsto "a" \words
  \new Lyrics \lyricsto "a" { \words }
  \new Lyrics \lyricmode { \lyricsto "a" \more }
  \new Lyrics { \lyricsto "a" { \more } }
  \new Lyrics \lyricsto "a" { \words four }
  \new Lyrics \lyricsto "nobody" { \words }
>>
