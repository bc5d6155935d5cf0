\version "2.24.0"
% laid out otherwise, one bar has come in, and three have changed
\score { <<
  \new Staff = "ob" \with { instrumentName = "Oboe 1" } { c''4 d''-. e'' fis'' | R1 | g''2 g'' | a''2 b'' | c'''1 | }
  \new Staff = "hp" \with { instrumentName = "Harp" } { <c' e'>1\p | R1 | r1 | <d' f'>1\mf | R1 | }
  \new Staff \with { instrumentName = "Celesta" } { R1*5 }
>> }
