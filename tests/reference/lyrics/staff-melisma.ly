\version "2.24.0"
% Lyrics that follow a staff: slurs, ties and beams of one of its voices.
\new Staff = "choir" <<
  \new Voice { \voiceOne c''4( d'') e'' f'' g''2~ g'' \autoBeamOff a''8[ b''] c'''4 r2 }
  \new Voice { \voiceTwo e'8 e' e' e' e'4 e' e' e' e' e' e'8[ f'] g' a' b'2 }
>>
\addlyrics { a b c d e f g h i j k l m n o p q r s t u }
