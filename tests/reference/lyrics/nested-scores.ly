\version "2.24.0"
% Two scores and a book; each has its own lines.
words = \lyricmode { one two }
\book {
  \score { { c'4 d' } \addlyrics \words }
  \bookpart { \score { << \new Voice = "a" { c'2 d' } \new Lyrics \lyricsto "a" \words >> } }
}
\markup { \score { { e'4 f' } \addlyrics { in side } } }
