% Lanterns over Hesk -- 1m1  First Light over Hesk
% Brass, in absolute pitches, score in C.  The parts transpose horns and trumpets.

\version "2.24.0"

hornOne = {
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*4 | % 5-8
  as'2.(\p f'4 | % 9
  f'4 es' des' c') |
  bes2(\< c'4 des' |
  es'2. c'4)\mp |
  % -- B --
  r4 f'2\mf( es'4 | % 13
  bes'4 as' ges' f' |
  des'2\f cis'4) a( |
  b2 dis') |
  % -- C --
  e'4.\f\espr( fis'8 gis'4 b' | % 17
  a'2) cis''4( b' |
  a'2 gis'4 fis' |
  fis'2 dis') |
  e'4\ff( fis' gis' cis'' | % 21
  e''2) cis''4( a' |
  gis'2 cis''4 dis'' |
  es''2)\> r4\! as8\p^"solo"( bes |
  % -- D --
  des'2 c'4 as | % 25
  bes4. as8 ges2) |
  f4.( ges8 as4 bes |
  ges4\> es c2)\pp |
  R1*2 | % 29-30
}

hornTwo = {
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  r4 f'2\mf( es'4 | % 13
  bes'4 as' ges' f' |
  des'2\f cis'4) a( |
  b2 dis') |
  % -- C --
  e'4.\f( fis'8 gis'4 b' | % 17
  a'2) cis''4( b' |
  a'2 gis'4 fis' |
  fis'2 dis') |
  e'4\ff( fis' gis' cis'' | % 21
  e''2) cis''4( a' |
  gis'2 cis''4 dis'' |
  es''2)\> r2\! |
  % -- D --
  R1*6 | % 25-30
}

hornThree = {
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  R1*4 | % 13-16
  % -- C --
  e'1\f( | % 17
  e'1) |
  e'1( |
  dis'1) |
  e'1\ff( | % 21
  e'1) |
  cis'1\> |
  c'2\p r |
  % -- D --
  R1*6 | % 25-30
}

hornFour = {
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  R1*4 | % 13-16
  % -- C --
  gis1\f( | % 17
  cis'1) |
  a1( |
  b1) |
  cis'1\ff( | % 21
  cis'1) |
  gis1\> |
  as2\p r |
  % -- D --
  R1*6 | % 25-30
}

trumpetOne = {
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  R1*2 | % 13-14
  r2 fis'4(\mf a' |
  b'2\< dis''4 fis'' |
  % -- C --
  gis''2)\f r | % 17
  R1*2 | % 18-19
  r2 r4 b'8\f( cis'' |
  e''2\< gis''4 gis'' | % 21
  a''2)\ff gis''4.( fis''8 |
  gis''2)\> r\! |
  R1 | % 24
  % -- D --
  R1*6 | % 25-30
}

trumpetTwo = {
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  R1*2 | % 13-14
  r2 cis'4(\mf fis' |
  fis'2\< fis'4 b' |
  % -- C --
  b'2)\f r | % 17
  R1*3 | % 18-20
  cis''2(\f\< e''4 e'' | % 21
  e''2)\ff e''4.( cis''8 |
  cis''2)\> r\! |
  R1 | % 24
  % -- D --
  R1*6 | % 25-30
}

tromboneOne = {
  \clef bass
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  R1*4 | % 13-16
  % -- C --
  b1\f( | % 17
  cis'1) |
  cis'1( |
  dis'1) |
  e'1\ff( | % 21
  cis'1) |
  dis'2\> r\! |
  R1 | % 24
  % -- D --
  R1*4 | % 25-28
  f1\ppp ~ | % 29
  f1\fermata | % 30
}

tromboneTwo = {
  \clef bass
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  R1*4 | % 13-16
  % -- C --
  gis1\f( | % 17
  a1) |
  a1( |
  b1) |
  gis1\ff( | % 21
  a1) |
  cis'2\> r\! |
  R1 | % 24
  % -- D --
  R1*4 | % 25-28
  des1\ppp ~ | % 29
  des1\fermata | % 30
}

bassTrombone = {
  \clef bass
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  R1*4 | % 13-16
  % -- C --
  e2\f dis4 e | % 17
  a,1 |
  fis,2. gis,8 a, |
  b,2 dis |
  cis2\ff gis, | % 21
  a,2. a,4 |
  gis,2\> r\! |
  R1 | % 24
  % -- D --
  R1*4 | % 25-28
  as,1\ppp ~ | % 29
  as,1\fermata | % 30
}

tuba = {
  \clef bass
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  R1*4 | % 13-16
  % -- C --
  e,2\f dis,4 e, | % 17
  a,1 |
  fis,2. gis,8 a, |
  b,2 dis |
  cis,2\ff gis,, | % 21
  a,2. a,4 |
  gis,2\> r\! |
  R1 | % 24
  % -- D --
  R1*6 | % 25-30
}
