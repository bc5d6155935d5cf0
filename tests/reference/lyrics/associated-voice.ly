\version "2.24.0"
% The manual's way: set one syllable early.
<<
  \new Staff <<
    \time 2/4
    \new Voice = "one" \relative { \voiceOne c''4 b8. a16 g4. r8 a4 ( b ) c2 }
    \new Voice = "two" \relative { \voiceTwo s2 s4. f'8 e8 d4. c2 }
  >>
  \new Lyrics \lyricsto "one" {
    No more let
    \set associatedVoice = "two"
    sins and sor -- rows grow.
  }
>>
