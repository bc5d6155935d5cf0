\version "2.24.0"
{ \compressMMRests { R1*3 } c'1 \time 3/4 R2.*2 \partial 4 c'4 d'2. \cadenzaOn c'4 d' \cadenzaOff e'2. }
