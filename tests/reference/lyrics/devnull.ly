\version "2.24.0"
% A melody only for the words, with engravers and without.
<<
  \new Staff { c'1 d' }
  \new Devnull = "n" { c'4( d') e' ~ e' | f'8[ g'] a'4 }
  \new Lyrics \lyricsto "n" { a b c d e f g h }
  \new NullVoice = "m" { c'4( d') e' ~ e' | f'8[ g'] a'4 }
  \new Lyrics \lyricsto "m" { a b c d e f g h }
>>
