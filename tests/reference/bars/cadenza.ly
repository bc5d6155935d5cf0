\version "2.24.0"
{ c'1 d'4 \cadenzaOn e'1 f'4 \cadenzaOff g'2. a'1 \cadenzaOn b'1 c''1 \bar "|" \cadenzaOff d''1 \cadenzaOn e''4 \time 3/4 f''2. \cadenzaOff g''2. a''2. }
