\version "2.24.0"
melody = { c'4 \tag #'one d'4 \tag #'two { d'8 e' } f'2 }
words = \lyricmode { a \tag #'one b \tag #'two { b c } d }
<<
  \new Voice = "a" \keepWithTag #'one \melody
  \new Lyrics \lyricsto "a" { \keepWithTag #'one \words }
  \new Voice = "b" \keepWithTag #'two \melody
  \new Lyrics \lyricsto "b" { \keepWithTag #'two \words }
  \new Voice = "c" \removeWithTag #'two \melody
  \new Lyrics \removeWithTag #'two \lyricsto "c" \words
>>
