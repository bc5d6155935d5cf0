\version "2.24.0"
% Pauses of all kinds take no syllable; neither do skips.
<<
  \new Voice = "a" { R1*2 c'4 r s d' | \skip 1 e'2 b'4\rest f'4 \cadenzaOn g'4 a' b' \cadenzaOff c''4 }
  \new Lyrics \lyricsto "a" { a b c d e f g h }
>>
