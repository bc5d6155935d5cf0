% Lanterns over Hesk -- 1m1  First Light over Hesk
% Woodwinds.  Everything sounds as written (score in C); the parts transpose.

\version "2.24.0"

piccolo = \relative c''' {
  \transposition c''
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  R1 |
  r2 f,4(\mf ges |
  bes4.\< as8 fis4 a |
  b2)\f r |
  % -- C --
  R1*3 | % 17-19
  r2 r4 b,8\f( cis |
  e2 gis4 b | % 21
  cis2\ff) b4.( a8 |
  gis2.) r4 |
  R1 | % 24
  % -- D --
  R1*6 | % 25-30
}

fluteOne = \relative c'' {
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*3 | % 5-7
  r2 r4 as8\p( bes |
  c2 es4. des8 | % 9
  bes2.\>) f8( ges |
  as4\p\< ges f \grace { des'16 } es4 |
  des2\mp c4) as8\mf( bes |
  % -- B --
  des2 c4 f | % 13
  as4.\< ges8 f2) |
  bes4.\f( as8 fis4 a |
  b4. a8 fis4 dis) |
  % -- C --
  r4 b16(\mf\< e gis b e b gis e gis4)\f | % 17
  R1 | % 18
  r4 cis,16( fis a cis fis cis a fis a4) |
  R1 |
  r4 cis,16( e gis cis e cis gis e gis4) | % 21
  R1 |
  gis2.\trill(\ff dis4 |
  es2)\> r2\! |
  % -- D --
  R1*3 | % 25-27
  r2 r4 f8(\pp es |
  es1 ~ | % 29
  es2 des2)\fermata | % 30
}

fluteTwo = \relative c'' {
  r4 |
  R1*3 | % 1-3
  r2 r4 as8\p( bes |
  % -- A --
  des2 c4 as | % 5
  f4. ges8 as2) |
  bes,4.( c8 des4 es |
  f4. es8 c4) r |
  R1*4 | % 9-12
  % -- B --
  R1*4 | % 13-16
  % -- C --
  R1 |
  r4 cis'16\mf( e a cis e cis a e a4) |
  R1 |
  r4 b,16( dis fis b dis b fis dis fis4) |
  R1 | % 21
  r4 cis16( e a cis e cis a e a4) |
  dis,2.\trill(\ff cis4 |
  c2)\> r2\! |
  % -- D --
  R1*6 | % 25-30
}

oboeOne = \relative c'' {
  r4 |
  R1*3 | % 1-3
  r2 r4 as8\mp\espr( bes |
  % -- A --
  des2 c4 as | % 5
  f4.\> ges8 as2) |
  bes4.\p\<( c8 des4 es |
  f4.\mp es8 c4) r |
  R1*4 | % 9-12
  % -- B --
  des2(\mf c4 f | % 13
  as4.\< ges8 f2) |
  bes4.\f( as8 fis4 a |
  b4. a8 fis4 dis) |
  % -- C --
  gis2.\f( fis8 e | % 17
  cis2 e4 a) |
  gis4.\mf( fis8 cis4 e |
  dis2.) r4 |
  r2 gis4\f( b | % 21
  cis2) b4.( a8 |
  gis2.) r4 |
  R1 | % 24
  % -- D --
  R1*2 | % 25-26
  r2 as,4(\p bes |
  ges4 es\> c2\niente ~ |
  c2 ~ c8)\! r r4 | % 29
  R1 | % 30
}

oboeTwo = \relative c'' {
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*8 | % 5-12
  % -- B --
  r4 f,2\mf( es4 | % 13
  bes'4 as ges f |
  des2\f cis4) r |
  R1 |
  % -- C --
  e4.\f( fis8 gis4 b | % 17
  a2) cis4( b |
  a2 gis4 fis |
  fis2 dis) |
  r2 cis'4\f( e | % 21
  e2) cis4( a |
  gis2.) r4 |
  R1 | % 24
  % -- D --
  R1*6 | % 25-30
}

corAnglais = \relative c' {
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*3 | % 5-7
  r2 r4 as'8\mp\espr( bes |
  c2\< es4. des8 | % 9
  bes2.\mf\>) f8( ges |
  as4\mp ges f es' |
  des2\> c2)\p |
  % -- B --
  R1*4 | % 13-16
  % -- C --
  e,4.\f( fis8 gis4 b | % 17
  a2) cis4( b |
  a2\mf gis4 fis |
  fis2 dis) |
  R1*4 | % 21-24
  % -- D --
  as'2.(\p f4 | % 25
  ges2 des) |
  R1*4 | % 27-30
}

clarinetOne = \relative c' {
  as'8\p\dolce( bes^"solo" |
  c2.) bes8( as | % 1
  bes2.\<) ges8( as |
  bes4\mp\> as f4. es8 |
  es2.)\p r4 |
  % -- A --
  R1*8 | % 5-12
  % -- B --
  f1\mf( ~ | % 13
  f1) |
  ges2\f( fis2 |
  dis1) |
  % -- C --
  gis16\mf( e b e gis b e b gis4) r | % 17
  R1 | % 18
  a16( fis cis fis a cis fis cis a4) r |
  R1 |
  gis16( e cis e gis cis e cis gis4) r | % 21
  R1 |
  cis2.\f( dis4 |
  es2)\> r2\! |
  % -- D --
  R1 |
  r2 des,2(\pp |
  des2 c4 bes |
  bes2 as) |
  R1*2 | % 29-30
}

clarinetTwo = \relative c' {
  r4 |
  R1*4 | % 1-4
  % -- A --
  R1*4 | % 5-8
  as'1\p( | % 9
  des,1) |
  des1( ~ |
  des2 c2) |
  % -- B --
  des1\mf( ~ | % 13
  des1) |
  bes2\f( a2 ~ |
  a1) |
  % -- C --
  R1 |
  a'16\mf( e cis e a cis e cis a4) r |
  R1 |
  fis16( dis b dis fis b dis b fis4) r |
  R1 | % 21
  a16( e cis e a cis e cis a4) r |
  gis2.\f( gis4 |
  as2)\> r2\! |
  % -- D --
  R1*6 | % 25-30
}

bassClarinet = \relative c {
  \clef bass
  r4 |
  R1*4 | % 1-4
  % -- A --
  des1(\p ~ | % 5
  des2. c4 |
  bes1 ~ |
  bes2 as |
  f1 ~ | % 9
  f2 bes |
  es2 ges4 es |
  as,1 ~ |
  % -- B --
  as2\< des4 f | % 13
  bes,2 as |
  ges2 fis4 a |
  b1)\f |
  % -- C --
  R1*4 | % 17-20
  cis2\f( gis) | % 21
  a2.( a4 |
  gis2.) r4 |
  R1 | % 24
  % -- D --
  R1*6 | % 25-30
}

bassoonOne = \relative c {
  \clef bass
  r4 |
  R1*4 | % 1-4
  % -- A --
  f1\p( ~ | % 5
  f1) |
  ges1( ~ |
  ges2 as2) |
  R1*4 | % 9-12
  % -- B --
  des,2\mf f | % 13
  bes,2 as |
  ges2\f fis |
  b2. a4 |
  % -- C --
  e'2\f dis4 e | % 17
  a,1 |
  fis2. gis8 a |
  b2 dis |
  cis2\ff gis | % 21
  a2. a4 |
  gis2.\> r4\! |
  R1 | % 24
  % -- D --
  R1*4 | % 25-28
  as'1\pp ~ | % 29
  as1\fermata | % 30
}

bassoonTwo = \relative c {
  \clef bass
  r4 |
  R1*4 | % 1-4
  % -- A --
  des1\p( ~ | % 5
  des1) |
  bes1( ~ |
  bes2 c2) |
  R1*4 | % 9-12
  % -- B --
  des2\mf f | % 13
  bes,2 as |
  ges2\f fis |
  b2. a4 |
  % -- C --
  e'2\f dis4 e | % 17
  a,1 |
  fis2. gis8 a |
  b2 dis |
  cis2\ff gis | % 21
  a2. a4 |
  gis2.\> r4\! |
  R1 | % 24
  % -- D --
  R1*6 | % 25-30
}
