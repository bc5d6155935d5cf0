% Lanterns over Hesk -- 1m2  Across the Flats
% Brass, entered as the players read it: horns in F, trumpets in Bb

\version "2.24.0"
\language "english"

hornOne = \relative c'' {
  \transposition f
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*2 | % 5-6
  r2 r4 a8-.\p a-. |
  b4 r4 r4. |
  % -- B --
  a4.\mf\espr( c8 e4 a | % 9
  g2 e4) r |
  f4.( a4 |
  bf4. f4) |
  a4.\<( g8 f4 e | % 13
  d4 g b4) r |
  c4\f-- b-- a4.-- |
  gs2. |
  % -- C --
  r8 e\f-. r e-. e4.-> | % 17
  r8 e-. r e-. e4.-> |
  r8 f-. r f-. f4.-> |
  r8 f-. r f-. f4.-> |
  d4.->\f d8-. f4-> d-> | % 21
  e2.->\> d8 b |
  c4.\p r4 |
  R8*5 | % 24
  % -- D --
  r4 ef4\ff\espr( d c | % 25
  c2 ef4 af) |
  c,2.( d8 ef |
  d2 b) |
  ef2( g4 ef | % 29
  g2 bf4 g) |
  c,2\>( ef4 af |
  gs2.\mf) |
  % -- E --
  r8 e\f-. r e4-> | % 33
  r8 f-. r f-. f4.-> |
  r8 f-. r f4-> |
  r8 e\<-. r e-. e4.-> |
  e4->\ff r8 e-. e4-> r8 e-. | % 37
  f4-> r8 f-. f4-> r |
  gs4-> gs8-. gs-. gs4-> gs-> |
  e4->\fff r r2 | % 40
}

hornTwo = \relative c'' {
  \transposition f
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*2 | % 5-6
  r2 r4 f,8-.\p f-. |
  gs4 r r4. |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  c2(\mf a4 c | % 13
  b2\< d4) r |
  e4--\f d-- c4.-- |
  b2. |
  % -- C --
  r8 c\f-. r c-. c4.-> | % 17
  r8 c-. r c-. c4.-> |
  r8 c-. r c-. c4.-> |
  r8 d-. r d-. d4.-> |
  bf4.->\f bf8-. d4-> bf-> | % 21
  b2.->\> b8 gs |
  a4.\p r4 |
  R8*5 | % 24
  % -- D --
  r4 ef'4\ff\espr( d c | % 25
  c2 ef4 af) |
  c,2.( d8 ef |
  d2 b) |
  ef2( g4 ef | % 29
  g2 bf4 g) |
  c,2\>( ef4 af |
  gs2.\mf) |
  % -- E --
  r8 c,\f-. r c4-> | % 33
  r8 c-. r c-. c4.-> |
  r8 d-. r d4-> |
  r8 b\<-. r b-. b4.-> |
  c4->\ff r8 c-. c4-> r8 c-. | % 37
  d4-> r8 d-. d4-> r |
  e4-> e8-. e-. e4-> e-> |
  c4->\fff r r2 | % 40
}

hornThree = \relative c'' {
  \transposition ef
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  a4.\mf\espr( c8 e4 a | % 9
  g2 e4) r |
  f4.( a4 |
  bf4. f4) |
  a4.\<( g8 f4 e | % 13
  d4 g b4) r |
  c4\f-- b-- a4.-- |
  gs2. |
  % -- C --
  r8 a,\f-. r a-. a4.-> | % 17
  r8 a-. r a-. a4.-> |
  r8 a-. r a-. a4.-> |
  r8 a-. r a-. a4.-> |
  R1*2 | % 21-22
  R8*10 | % 23-24
  % -- D --
  c2\ff( g'4. f8 | % 25
  ef4 d c2) |
  af'2.(\ff g8 f |
  g2 d) |
  c4.( d8 ef4 g | % 29
  bf2 g4 ef) |
  af2\>( f4 c |
  b2.\mf) |
  % -- E --
  r8 a\f-. r a4-> | % 33
  r8 a-. r a-. a4.-> |
  r8 a-. r a4-> |
  r8 gs\<-. r gs-. gs4.-> |
  a4->\ff r8 a-. a4-> r8 a-. | % 37
  bf4-> r8 bf-. bf4-> r |
  b4-> b8-. b-. b4-> b-> |
  a4->\fff r r2 | % 40
}

hornFour = \relative c'' {
  \transposition f
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  a2(\mf f | % 13
  g2\< g4) r |
  a4--\f a-- e4.-- |
  e2. |
  % -- C --
  r8 e\f-. r e-. e4.-> | % 17
  r8 e-. r e-. e4.-> |
  r8 f-. r f-. f4.-> |
  r8 f-. r f-. f4.-> |
  R1*2 | % 21-22
  R8*10 | % 23-24
  % -- D --
  ef1\ff( | % 25
  c1) |
  c1( |
  d1) |
  ef1( | % 29
  ef1) |
  c1\>( |
  e2.\mf) |
  % -- E --
  r8 e\f-. r e4-> | % 33
  r8 f-. r f-. f4.-> |
  r8 f-. r f4-> |
  r8 e\<-. r e-. e4.-> |
  e4->\ff r8 e-. e4-> r8 e-. | % 37
  f4-> r8 f-. f4-> r |
  gs4-> gs8-. gs-. gs4-> gs-> |
  e4->\fff r r2 | % 40
}

trumpetOne = \relative c'' {
  \transposition bf
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  R1*2 | % 13-14
  r2 e16\mf e e8-. e-. |
  ds2.\< |
  % -- C --
  e8-.\f r r4 r4. | % 17
  R8*7 | % 18
  r2 g8(\f a b) |
  a4 r r4. |
  r4 a,16\mf a a8-. c4-> r8 c-. | % 21
  r4 b16\< b b8-. ds4-> fs-> |
  e4.\f r4 |
  R8*5 | % 24
  % -- D --
  r2 d4.\ff c8 | % 25
  bf4( a g2) |
  R1*2 | % 27-28
  g4.\ff( a8 bf4 d | % 29
  f2 d4 bf) |
  ef2\>( c4 g |
  fs2.\mf) |
  % -- E --
  r8 e'\f-. r e4-> | % 33
  r8 e-. r e-. e4.-> |
  r8 e-. r e4-> |
  r8 ds\<-. r ds-. ds4.-> |
  g4->\ff r8 g16 g g4-> r8 g-. | % 37
  a4-> r8 a16 a a4-> r |
  b4-> b8-. b-. \tuplet 3/2 { b8 b b } b4-> |
  b4->\fff r r2 | % 40
}

trumpetTwo = \relative c'' {
  \transposition bf
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  R1*2 | % 13-14
  r2 b16\mf b b8-. b-. |
  b2.\< |
  % -- C --
  b8-.\f r r4 r4. | % 17
  R8*7 | % 18
  r2 e8(\f e g) |
  e4 r r4. |
  r4 f,16\mf f f8-. a4-> r8 a-. | % 21
  r4 fs16\< fs fs8-. b4-> ds-> |
  b4.\f r4 |
  R8*5 | % 24
  % -- D --
  R1*4 | % 25-28
  d,4.(\ff f8 g4 bf | % 29
  d2 bf4 f) |
  g2(\> g4 ef |
  ds2.)\mf |
  % -- E --
  r8 b'\f-. r b4-> | % 33
  r8 c-. r c-. c4.-> |
  r8 c-. r c4-> |
  r8 b\<-. r b-. b4.-> |
  e4->\ff r8 e16 e e4-> r8 e-. | % 37
  f4-> r8 f16 f f4-> r |
  fs4-> fs8-. fs-. \tuplet 3/2 { fs8 fs fs } fs4-> |
  g4->\fff r r2 | % 40
}

trumpetThree = \relative c'' {
  \transposition bf
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  R1*2 | % 13-14
  R8*7 | % 15
  fs,2.\mf\< |
  % -- C --
  g8-.\f r r4 r4. | % 17
  R8*21 | % 18-20
  r4 c,16\mf c c8-. f4-> r8 f-. | % 21
  r4 ds16\< ds ds8-. fs4-> b-> |
  g4.\f r4 |
  R8*5 | % 24
  % -- D --
  R1*5 | % 25-29
  bf2(\ff bf4 f) |
  ef2.( bf4 |
  b2.)\mf |
  % -- E --
  r8 g'\f-. r g4-> | % 33
  r8 g-. r g-. g4.-> |
  r8 a-. r a4-> |
  r8 fs\<-. r fs-. fs4.-> |
  b4->\ff r8 b16 b b4-> r8 b-. | % 37
  c4-> r8 c16 c c4-> r |
  ds4-> ds8-. ds-. \tuplet 3/2 { ds8 ds ds } ds4-> |
  e4->\fff r r2 | % 40
}

tromboneOne = \relative c' {
  \clef tenor
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  R1*2 | % 13-14
  R8*7 | % 15
  R2. |
  % -- C --
  r8 f\f-. r f-. f4.-> | % 17
  r8 f-. r f-. f4.-> |
  r8 f-. r f-. f4.-> |
  r8 g-. r g-. g4.-> |
  bf,4.->\f bf8-. ef4-> bf-> | % 21
  a4.->\> a8-. cs4-> a-> |
  a4.\p r4 |
  R8*5 | % 24
  % -- D --
  c1\ff( | % 25
  df1) |
  df1( |
  c1) |
  c1( | % 29
  c1) |
  df1\>( |
  cs2.\mf) |
  % -- E --
  r8 f\f-. r f4-> | % 33
  r8 f-. r f-. f4.-> |
  r8 g-. r g4-> |
  r8 a\<-. r a-. a4.-> |
  f4->\ff r8 f-. f4-> r8 f-. | % 37
  g4-> r8 g-. g4-> r |
  e4-> e8-. e-. e4-> e-> |
  f4->\fff r r2 | % 40
}

tromboneTwo = \relative c {
  \clef bass
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  R1*2 | % 13-14
  R8*7 | % 15
  R2. |
  % -- C --
  r8 a'\f-. r a-. a4.-> | % 17
  r8 a-. r a-. a4.-> |
  r8 d-. r d-. d4.-> |
  r8 bf-. r bf-. bf4.-> |
  g4.->\f g8-. bf4-> g-> | % 21
  g4.->\> g8-. a4-> e-> |
  f4.\p r4 |
  R8*5 | % 24
  % -- D --
  af1\ff( | % 25
  f1) |
  f1( |
  e1) |
  af1( | % 29
  af1) |
  f1\>( |
  e2.\mf) |
  % -- E --
  r8 a\f-. r a4-> | % 33
  r8 d-. r d-. d4.-> |
  r8 bf-. r bf4-> |
  r8 cs\<-. r cs-. cs4.-> |
  a4->\ff r8 a-. a4-> r8 a-. | % 37
  bf4-> r8 bf-. bf4-> r |
  a4-> a8-. a-. a4-> a-> |
  a4->\fff r r2 | % 40
}

bassTrombone = \relative c {
  \clef bass
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  R1*2 | % 13-14
  R8*7 | % 15
  R2. |
  % -- C --
  R8*28 | % 17-20
  ef4.->\f ef8-. ef4-> ef-> | % 21
  a,4.->\> a8-. a4-> a-> |
  d4.\p r4 |
  R8*5 | % 24
  % -- D --
  f,4\ff r8 f8 c'4 f, | % 25
  df4 r8 df8 af'4 df, |
  bf'4 r8 bf8 f'4 bf, |
  c,4 r8 c8 g'4 c, |
  f4 r8 f8 c'4 f, | % 29
  af4 r8 af8 ef'4 af, |
  df,4 r8 df8 af'4 df, |
  a'4 r8 a8 e'4 |
  % -- E --
  d,4.\f a'4 | % 33
  bf4 bf4 f'4. |
  g,4. d'4 |
  a4 a4 e'4. |
  d,4\ff r8 d8 a'4 d, | % 37
  ef4 r8 ef8 bf'4 ef, |
  a4 r8 a8 e'4 a, |
  d4->\fff r r2 | % 40
}

tuba = \relative c {
  \clef bass
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  bf16\mf bf bf bf bf bf bf bf bf bf bf bf bf bf bf bf | % 13
  c16\< c c c c c c c c c c c c c c c |
  d4\f r r4. |
  R2. |
  % -- C --
  R8*28 | % 17-20
  ef4.->\f ef8-. ef4-> ef-> | % 21
  a,4.->\> a8-. a4-> a-> |
  d4.\p r4 |
  R8*5 | % 24
  % -- D --
  f,,4\ff r8 f8 c'4 f, | % 25
  df'4 r8 df8 af'4 df, |
  bf4 r8 bf8 f'4 bf, |
  c4 r8 c8 g'4 c, |
  f,4 r8 f8 c'4 f, | % 29
  af4 r8 af8 ef'4 af, |
  df4 r8 df8 af'4 df, |
  a4 r8 a8 e'4 |
  % -- E --
  d4.\f a'4 | % 33
  bf,4 bf4 f'4. |
  g,4. d'4 |
  a4 a4 e'4. |
  d4\ff r8 d8 a'4 d, | % 37
  ef4 r8 ef8 bf'4 ef, |
  a,4 r8 a8 e'4 a, |
  d4->\fff r r2 | % 40
}
