% Lanterns over Hesk -- 1m1  First Light over Hesk
% Strings.  Double bass sounds an octave lower.

\version "2.24.0"

violinOne = \relative c'' {
  r4 |
  c1\conSord\pp | % 1
  bes1 |
  as1 ~ |
  as1 ~ |
  % -- A --
  as1\p ~ | % 5
  as1 |
  bes1\< ~ |
  bes2\mp as2 |
  R1*3 | % 9-11
  r2 r4 as8\mf\senSord( bes |
  % -- B --
  des2 c4 f | % 13
  as4.\< ges8 f2) |
  bes4.\f( as8 fis4 a |
  b4. a8 fis4 dis) |
  % -- C --
  gis2.\f\espr( fis8 e | % 17
  cis2 e4 a) |
  gis4.( fis8 cis4 e |
  dis2.) fis,,8( cis'' |
  e2\ff gis4 b | % 21
  cis2) b4.( a8 |
  gis2.\ff\> dis4 |
  es2.)\p r4 |
  % -- D --
  R1 |
  r2 des'2\pp^"con sord." ~ |
  des1 ~ |
  des2 c |
  des1 ~ | % 29
  des1\fermata | % 30
}

violinTwo = \relative c' {
  r4 |
  f1\conSord\pp | % 1
  ges1 |
  f1 |
  es1 |
  % -- A --
  f1\p ~ | % 5
  f1 |
  ges1\< ~ |
  ges2\mp es2 |
  as1\p | % 9
  bes1 |
  ges1 |
  R1 | % 12
  % -- B --
  des2\mf\senSord( c4 f | % 13
  as4.\< ges8 f2) |
  bes4.\f( as8 fis4 a |
  b4. a8 fis4 dis) |
  % -- C --
  gis1:32\f | % 17
  a1:32 |
  a1:32 |
  b1:32 |
  e1:32\ff | % 21
  cis1:32 |
  cis1:32\> |
  c1:32\p |
  % -- D --
  f,1\pp\conSord | % 25
  ges1 |
  des1 ~ |
  des2 c2 |
  f1 ~ | % 29
  f1\fermata | % 30
}

viola = \relative c' {
  \clef alto
  r4 |
  des1\conSord\pp ~ | % 1
  des1 ~ |
  des1 ~ |
  des1 ~ |
  % -- A --
  des1\p ~ | % 5
  des1 ~ |
  des1\< ~ |
  des2\mp c2 |
  c1\p | % 9
  des1 |
  << { es1 } \\ { des1 } >> |
  R1 | % 12
  % -- B --
  r4 f2(\mf\senSord es4 | % 13
  bes'4\< as ges f |
  des2\f cis4) a( |
  b2 dis) |
  % -- C --
  gis,1:32\f | % 17
  a1:32 |
  a1:32 |
  b1:32 |
  << { gis'4\ff( fis gis cis) } \\ { e,2 cis } >> | % 21
  << { e'2( cis4 a) } \\ { a2 e } >> |
  <gis, dis'>1\> |
  <as es'>1\p |
  % -- D --
  r2 f'2\pp\conSord | % 25
  ges1 |
  f1 |
  es2 es |
  des1 ~ | % 29
  des1\fermata | % 30
}

cello = \relative c {
  \clef bass
  r4 |
  des1\conSord\pp ~ | % 1
  des1 ~ |
  des1 |
  as1 |
  % -- A --
  des2\p des4 c | % 5
  bes2. as4 |
  ges1 |
  es'2 as, |
  f2.\p as4 | % 9
  bes1 |
  es2\< ges4 es |
  as,4\mp r r2 |
  % -- B --
  r4 f'2\mf\senSord( es4 | % 13
  bes'4 as ges f |
  des2\f cis4) a( |
  b2 dis) |
  % -- C --
  e2\f dis4 e | % 17
  a,1 |
  fis2. gis8( a) |
  b2 dis |
  cis2\ff gis | % 21
  a2. a4 |
  gis1\> |
  as1\p |
  % -- D --
  des1\pp ~ | % 25
  des1 |
  bes2( as) |
  es'2( as,) |
  des1 ~ | % 29
  <des as'>1\fermata | % 30
}

doubleBass = \relative c {
  \transposition c
  \clef bass
  r4 |
  des'1\pp ~ | % 1
  des1 ~ |
  des1 |
  as1 |
  % -- A --
  des4\p\pizz r r2 | % 5
  bes4 r r2 |
  ges4 r r des' |
  es,4 r as r |
  f4 r r as | % 9
  bes4 r r2 |
  es,4 r ges r |
  as4 r r8 as bes8\arco( c8) |
  % -- B --
  des2\mf f | % 13
  bes,2 as |
  ges2 fis |
  b2.\f a4 |
  % -- C --
  e2\f dis4 e | % 17
  a1 |
  fis2. gis8( a) |
  b2 dis |
  cis2\ff gis | % 21
  a2. a4 |
  gis1\> |
  as1\p |
  % -- D --
  des1\pp ~ | % 25
  des1 |
  bes2( as) |
  es4\pizz r as r |
  des2 r | % 29
  des4 r r2\fermata | % 30
}
