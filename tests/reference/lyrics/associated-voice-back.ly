\version "2.24.0"
% There and back, and a name that is no voice's.
<<
  \new Voice = "one" { c''4 d'' e'' f'' | g''8 a'' b'' c''' g''2 | c''1 }
  \new Voice = "two" { c'8 d' e' f' g' a' b' c'' | g'4 g' g'2 | c'2 c' }
  \new Lyrics = "x" \lyricsto "one" {
    a \set associatedVoice = "two" b c d e \set Lyrics.associatedVoice = "one" f g h
    \unset associatedVoice i j k l m
  }
  \new Lyrics \lyricsto "one" { a b \set associatedVoice = "none" c d e f }
>>
