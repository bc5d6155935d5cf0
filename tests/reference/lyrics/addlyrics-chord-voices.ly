\version "2.24.0"
% In a staff of two voices: both take the first note that comes.
\new Staff <<
  \new Voice = "up" { \voiceOne c''4 d''( e'') f'' } \addlyrics { a b c }
  \new Voice = "down" { \voiceTwo g'2 a'4 b' } \addlyrics { x y z }
>>
