\version "2.24.0"
{ \cadenzaOn c'4 d'2 \cadenzaOff \time 3/4 \partial 4 e'4 f'2. g'2. }
