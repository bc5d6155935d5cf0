\version "2.24.0"
<<
  \new TabStaff \new TabVoice = "t" { c'4( d') e' f' }
  \new Lyrics \lyricsto "t" { a b c d }
>>
