\version "2.24.0"
{ \time 4/4 \partial 8 \time 3/4 c'8 d'2. \partial 4 \time 2/4 c'4 d'2 \time 3/4 \partial 4 e'4 f'2. g'2. }
