\version "2.24.0"
% Quoted notes are not sung, unless a line follows their voice.
\addQuote "flute" { c''4 d'' e'' f'' | g''1 }
<<
  \new Staff \new Voice = "a" { c'4 d' \cueDuring "flute" #UP { r2 } e'2 f' }
  \new Lyrics \lyricsto "a" { a b c d }
  \new Lyrics \lyricsto "cue" { k l m n }
  \new Staff \new Voice = "b" { \quoteDuring "flute" { s2 } g'4( a') b'1 }
  \new Lyrics \lyricsto "b" { w x y z }
  \new Staff << \new Voice = "m" { c'2 d' } \new CueVoice = "n" { e'4( f') g' a' } >>
  \new Lyrics \lyricsto "n" { p q r s }
>>
