\version "2.24.0"
% Cues belong to somebody else; a staff without a known instrument has no compass; percussion has none.
tubaPart = { c,4 d, e, f, }
\addQuote "tuba" \tubaPart
<<
  \new Staff \with { instrumentName = "Flute" } { \cueDuring "tuba" #UP { R1 } c''1 }
  \new Staff { c,,4 c''''' c c r1 }
  \new Staff \with { instrumentName = "Tam-tam" } { c,,4 c''''' c c r1 }
>>
