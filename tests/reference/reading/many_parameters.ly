\version "2.24.0"
fA = #(define-music-function (pA pB pC pD pE pF pG pH pI pJ pK pL) (ly:music? ly:music? ly:music? ly:music? ly:music? ly:music? ly:music? ly:music? ly:music? ly:music? ly:music? ly:music?) #{ $pA $pL $pK #})
{ \fA c'4 d'4 e'4 f'4 g'4 a'4 b'4 c''4 d''4 e''4 f''4 g''4 g''2 }
