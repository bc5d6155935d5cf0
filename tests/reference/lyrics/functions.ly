\version "2.24.0"
% Melodies and words that come out of calls, and marks behind variables and calls.
sing = #(define-music-function (melody words) (ly:music? ly:music?) #{ << \new Voice = "f" $melody \new Lyrics \lyricsto "f" $words >> #})
verse = #(define-music-function (words) (ly:music?) #{ \new Lyrics \lyricsto "g" $words #})
begin = (
done = )
<<
  \sing { c'4\begin d'\done e' f' } \lyricmode { a b c d }
  \new Voice = "g" \transpose c d { c'4-\tweak color #red ( d'^) \parenthesize e'( \tweak color #red f'-\done) }
  \verse \lyricmode { k l m n }
  \verse \lyricmode { p q }
>>
