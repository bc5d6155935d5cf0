\version "2.24.0"
% A chord takes one syllable; tuplets, scaled durations, q, bare durations.
<<
  \new Voice = "a" {
    <c' e'>4 <d' f'>( <e' g'>) q \tuplet 3/2 { c'8 d' e' } \tuplet 3/2 { f'4( g' a') } \scaleDurations 2/3 { c'4 d'8 }
    8 4 R1 s4 c'4
  }
  \new Lyrics \lyricsto "a" { a b c d e f g h i j k l m }
>>
