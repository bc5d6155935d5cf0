% Lanterns over Hesk -- 1m3  The Crossing
% Timpani, one percussion player (triangle, cymbal, bass drum, tam-tam), vibraphone with four sticks

\version "2.24.0"
\language "nederlands"

timpani = \relative c {
  \clef bass
  g'4\pp\softMallets r8 r4. d4 r8 r4. | % 1
  g4 r8 r4. r2. |
  g4 r8 r4. d4 r8 r4. |
  d1.:32\< |
  % -- A --
  g4\mp r8 r4. r2. | % 5
  R1.*5 | % 6-10
  d2.:32\p\< |
  % -- B --
  g4\mf r8 r4. d4 r8 r4. |
  d4 r8 r4. r2. | % 13
  R1.*4 | % 14-17
  d1.:32\mf |
  es4 r8 r4. es8 es es |
  d2.:32\< d8 d d |
  % -- C --
  g4.->\ff g8 d g d4.-> d8 d d | % 21
  e4. r e r |
  g4. r r2. |
  d4.-> d8 d d d2.:32 |
  g4.-> r d r | % 25
  R1. |
  a'1.:32\> |
  d,4.\mf r |
  % -- D --
  R1.*4 | % 29-32
  g1.:32\ppp ~ | % 33
  g1.:32\fermata | % 34
}

battery = \drummode {
  R1.*3 | % 1-3
  cymc1.:32\ppp\< |
  % -- A --
  tri4\p r8 r4. r2. | % 5
  R1.*5 | % 6-10
  cymc2.:32\pp\< |
  % -- B --
  bd4.\mf r r2. |
  R1. |
  r2. bd4.\mp r |
  R1.*3 | % 15-17
  cymc1.:32\p\< |
  bd2.\f tri4. |
  cymc2.:32\mf\< cymc4.:32 |
  % -- C --
  <cymc bd>2.\ff bd | % 21
  r2. bd4. r |
  bd2. bd |
  cymc1.:32\mf\< |
  <cymc bd>2.\f r | % 25
  bd2. bd |
  tt1.\mf\> |
  tri4.\p r |
  % -- D --
  R1. |
  tt1.\pp |
  R1.*2 | % 31-32
  tri4\ppp r8 r4. r2. | % 33
  R1. |
}

vibraphone = \relative c' {
  r4. <d g>4\pp bes'8 d4. bes4. | % 1
  r4. <es, g>4 bes'8 es4. bes4. |
  r4. <d, g>4 bes'8 d4. bes4. |
  r4. <d, fis>4 a'8 d4. a4. |
  % -- A --
  R1.*4 | % 5-8
  <g bes>4\mp d'8 g4. <g, bes>4 d'8 f4. | % 9
  <es, g>4 c'8 es4. g,2. |
  fis4 a8 c4. |
  % -- B --
  R1.*2 | % 12-13
  <g bes>2.\mf <es' g>2. |
  <f, a>2. <c' f>2. |
  R1.*3 | % 16-18
  R8*18 | % 19-20
  % -- C --
  <g b d g b>2.\f <d' g>2. | % 21
  <e, g b>2. <b' e>2. |
  <e, g c>2. <c' e>2. |
  <d, fis a>4. a' d2. |
  R1.*3 | % 25-27
  R2. |
  % -- D --
  r4. <d, g>4\pp b'8 d4. b4. | % 29
  r4. <es, g>4 c'8 es4. c4. |
  R1.*2 | % 31-32
  r4. <d, g>4\ppp b'8 d2. ~ | % 33
  d1.\fermata | % 34
}
