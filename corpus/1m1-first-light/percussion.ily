% Lanterns over Hesk -- 1m1  First Light over Hesk
% Timpani (Db Ab Bb E, changes by pedal), one percussion player, glockenspiel (sounds two octaves higher)

\version "2.24.0"

timpani = \relative c {
  \clef bass
  r4 |
  des1:32\pp\softMallets | % 1
  R1 |
  des1:32\pp\< |
  as4\mp r r2 |
  % -- A --
  R1*7 | % 5-11
  as1:32\pp\< |
  % -- B --
  des4\mf r r2 | % 13
  R1*2 | % 14-15
  b1:32\p\< |
  % -- C --
  e4\f r r b8 b | % 17
  a4 r r2 |
  R1 |
  b2.:32\mf\< b8 b |
  cis4\f r gis r | % 21
  a4 r a8 a a4 |
  gis1:32\ff\> |
  as2:32 as4\pp r |
  % -- D --
  R1*4 | % 25-28
  des1:32\ppp ~ | % 29
  des1:32\fermata | % 30
}

percussion = \drummode {
  r4 |
  R1*3 | % 1-3
  cymc1:32\ppp\< |
  % -- A --
  cymc2\p\lv r | % 5
  R1*6 | % 6-11
  cymc1:32\pp\< |
  % -- B --
  cymc4\mf r bd2\p | % 13
  R1*2 | % 14-15
  cymc2:32\p\< cymc:32 |
  % -- C --
  <cymc bd>4\f r r2 | % 17
  r2 bd2\mf |
  R1 |
  r2 cymc2:32\mf\< |
  <cymc bd>2\f r4 bd | % 21
  bd2 r2 |
  tri1:32\f\> |
  tri2\p r |
  % -- D --
  R1*4 | % 25-28
  tt1\ppp\lv | % 29
  R1 | % 30
}

glockenspiel = \relative c'' {
  \transposition c'''
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  r4 des\p f as | % 13
  as2 r |
  R1*2 | % 15-16
  % -- C --
  r4 e\mf gis b | % 17
  r4 e, a e |
  r4 cis fis a |
  r4 b, dis fis |
  r4 cis\f e gis | % 21
  a2 e |
  gis2 r |
  R1 | % 24
  % -- D --
  r2 r4 as,\pp | % 25
  des2 r |
  R1*4 | % 27-30
}
