% Lanterns over Hesk -- 1m2  Across the Flats
% Woodwinds, entered as the players read them (clarinets and bass clarinet in Bb, treble clef)

\version "2.24.0"
\language "english"

piccolo = \relative c'' {
  \transposition c''
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
  R8*21 | % 17-19
  r2 bf'8(\f a g) |
  g4-> r r2 | % 21
  R1 |
  R8*5 |
  r4. c,16(\mf d e g |
  % -- D --
  f4)\ff r r2 | % 25
  R1*2 | % 26-27
  r2 g16( af bf c df c bf g |
  f4) r r2 | % 29
  r2 r8 af,16( bf c df ef f |
  af8-.) r r4 r2 |
  R2. |
  % -- E --
  R8*5 | % 33
  R8*7 |
  g8\f\marcato-. g-. g-. d4-> |
  a'8-. a-. e-. e-. cs4.-> |
  d4\ff-> r8 d-. a4-> r8 a-. | % 37
  ef'4-> r8 ef-. bf4-> r |
  a8-. a-. cs-. cs-. e-. e-. a4-> |
  d,4-> r r2 | % 40
}

fluteOne = \relative c'' {
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1 | % 9
  r2 r8 c16(\mf d e f g a |
  bf8-.) r r r4 |
  r4. r8 bf16(\< a |
  bf4)\f r r2 | % 13
  R1 |
  R8*7 | % 15
  R2. |
  % -- C --
  d,8\f\marcato-. d-. a-. a-. d( e f) | % 17
  e8-. e-. a,-. a-. e'( d c) |
  d8-. d-. bf-. bf-. f'( g a) |
  g8-. g-. d-. d-. bf'( a g) |
  g4-> r r2 | % 21
  R1 |
  R8*5 |
  c,16(\mf\< d e f g a bf c d e |
  % -- D --
  f4)\ff r c4.( bf8 | % 25
  af4 g f2) |
  df'2.( c8 bf |
  c2 g) |
  f4.( g8 af4 c | % 29
  ef2 c4 af) |
  df16( af f' df af' f df' af f' df af f df8-.) r |
  e,2.\mf |
  % -- E --
  d8\f\marcato-. d-. d-. a4-> | % 33
  bf8-. bf-. d-. d-. f4.-> |
  g8-. g-. g-. d4-> |
  a'8\<-. a-. e-. e-. cs4.-> |
  d4\ff-> r8 d-. a4-> r8 a-. | % 37
  ef'4-> r8 ef-. bf4-> r |
  a8-. a-. cs-. cs-. e-. e-. a4-> |
  d,4-> r r2 | % 40
}

fluteTwo = \relative c'' {
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1*2 | % 9-10
  R8*5 |
  r4. r8 g'16(\mf\< f |
  f4)\f r r2 | % 13
  R1 |
  R8*7 | % 15
  R2. |
  % -- C --
  R8*14 | % 17-18
  d8-.\f d-. bf-. bf-. f'( g a) |
  g8-. g-. d-. d-. bf'( a g) |
  bf4-> r r2 | % 21
  R1 |
  R8*5 |
  e,16(\mf\< f g a bf a g a bf g |
  % -- D --
  f4)\ff r c'4.( bf8 | % 25
  af4 g f2) |
  df'2.( c8 bf |
  c2 g) |
  f4.( g8 af4 c | % 29
  ef2 c4 af) |
  df2\>( bf4 f |
  e2.\mf) |
  % -- E --
  d8\f\marcato-. d-. d-. a4-> | % 33
  bf8-. bf-. d-. d-. f4.-> |
  g8-. g-. g-. d4-> |
  a'8\<-. a-. e-. e-. cs4.-> |
  d4\ff-> r8 d-. a4-> r8 a-. | % 37
  ef'4-> r8 ef-. bf4-> r |
  a8-. a-. cs-. cs-. e-. e-. a4-> |
  d,4-> r r2 | % 40
}

oboeOne = \relative c'' {
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  d4.(\mf c8 bf4 a | % 13
  g4\< c e2) |
  f4--\f e-- d4.-- |
  cs4 r r |
  % -- C --
  d8\f\marcato-. d-. a-. a-. d( e f) | % 17
  e8-. e-. a,-. a-. e'( d c) |
  d8-. d-. bf-. bf-. f'( g a) |
  g8-. g-. d-. d-. bf'( a g) |
  g4-> r r2 | % 21
  R1 |
  R8*5 |
  r4. c,16(\mf d e f |
  % -- D --
  f4)\ff r c4.( bf8 | % 25
  af4 g f2) |
  df'2.( c8 bf |
  c2 g) |
  f4.( g8 af4 c | % 29
  ef2 c4 af) |
  df2\>( bf4 f |
  e2.\mf) |
  % -- E --
  d'8\f\marcato-. d-. d-. a4-> | % 33
  bf8-. bf-. d-. d-. f4.-> |
  g8-. g-. g-. d4-> |
  a'8\<-. a-. e-. e-. cs4.-> |
  d4\ff-> r8 d-. a4-> r8 a-. | % 37
  ef'4-> r8 ef-. bf4-> r |
  a8-. a-. cs-. cs-. e-. e-. a4-> |
  d,4-> r r2 | % 40
}

oboeTwo = \relative c'' {
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  bf2(\mf f | % 13
  e2\< g) |
  a4--\f g-- f4.-- |
  e4 r r |
  % -- C --
  r8 a\f-. r a-. a4.-> | % 17
  r8 a-. r a-. a4.-> |
  r8 bf-. r bf-. bf4.-> |
  r8 bf-. r bf-. bf4.-> |
  R1*2 | % 21-22
  R8*10 | % 23-24
  % -- D --
  r4 af4\ff( g f | % 25
  f2 af4 df) |
  f,2.( g8 af |
  g2 e) |
  af2( c4 af | % 29
  c2 ef4 c) |
  f,2\>( af4 df |
  cs2.\mf) |
  % -- E --
  r8 a\f-. r a4-> | % 33
  r8 bf-. r bf-. bf4.-> |
  r8 bf-. r bf4-> |
  r8 a-. r a-. a4.-> |
  d4\ff-> r8 d-. a4-> r8 a-. | % 37
  ef'4-> r8 ef-. bf4-> r |
  a8-. a-. cs-. cs-. e-. e-. a4-> |
  d,4-> r r2 | % 40
}

clarinetOne = \relative c'' {
  \transposition bf
  R1*3 | % 1-3
  R2. |
  % -- A --
  e,2\mp\espr( b'4. a8 | % 5
  g4 fs e2) |
  c'2.\<( b8 a |
  b4\mf a fs4.) |
  % -- B --
  R1*2 | % 9-10
  R8*10 | % 11-12
  R1*2 | % 13-14
  R8*7 | % 15
  R2. |
  % -- C --
  e'8\f\marcato-. e-. b-. b-. e( fs g) | % 17
  fs8-. fs-. b,-. b-. fs'( e d) |
  e8-. e-. c-. c-. g'( a b) |
  a8-. a-. e-. e-. c'( b a) |
  a4-> r r2 | % 21
  r2 r4 fs8-.\mf ds-. |
  e4.( b4) |
  c4.(\< a4) |
  % -- D --
  r4 bf4\ff( a g | % 25
  g2 bf4 ef) |
  g,2.( a8 bf |
  a2 fs) |
  bf2( d4 bf | % 29
  d2 f4 d) |
  g,2\>( bf4 ef |
  ds2.\mf) |
  % -- E --
  e8\f\marcato-. e-. e-. b4-> | % 33
  c8-. c-. e-. e-. g4.-> |
  a8-. a-. a-. e4-> |
  b'8\<-. b-. fs-. fs-. ds4.-> |
  e4\ff-> r8 e-. b4-> r8 b-. | % 37
  f'4-> r8 f-. c4-> r |
  b8-. b-. ds-. ds-. fs-. fs-. b4-> |
  e,4-> r r2 | % 40
}

clarinetTwo = \relative c'' {
  \transposition bf
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*2 | % 5-6
  a2.(\p g8 fs |
  fs4 e ds4.) |
  % -- B --
  b2\mf( e4. fs8 | % 9
  g2 d) |
  e4.( a4 |
  a4. f4) |
  g2\<( e4 g | % 13
  fs2 a4)\f r |
  R8*7 | % 15
  R2. |
  % -- C --
  r8 g\f-. r g-. g4.-> | % 17
  r8 g-. r g-. g4.-> |
  r8 e-. r e-. e4.-> |
  r8 e-. r e-. e4.-> |
  R1*2 | % 21-22
  g4.(\mf e4) |
  fs4.\< r4 |
  % -- D --
  r8 bf,16\ff( d g bf d bf g8-.) r r4 | % 25
  R1 |
  r8 ef16( g c ef g ef c8-.) r r4 |
  R1 |
  r8 bf,16( d g bf d bf g8-.) r r4 | % 29
  R1 | % 30
  r8 g16( bf ef g bf g ef8-.) r r4 |
  R2. |
  % -- E --
  r8 g,\f-. r g4-> | % 33
  r8 e-. r e-. e4.-> |
  r8 e-. r e4-> |
  r8 ds-. r ds-. ds4.-> |
  e4->\ff r8 e-. b4-> r8 b-. | % 37
  f'4-> r8 f-. c4-> r |
  b8-. b-. ds-. ds-. fs-. fs-. b4-> |
  e,4-> r r2 | % 40
}

bassClarinet = \relative c' {
  \transposition bf,
  e,4\p r8 e8 b'4 e, | % 1
  e4 r8 e8 b'4 e, |
  c'4 r8 c8 g'4 c, |
  b4 r8 b8 fs'4 |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  e,4\mp r8 e8 b'4 e, | % 9
  g4 r8 g8 d'4 g, |
  a4. e'4 |
  R8*5 | % 12
  c4\< r8 c8 g'4 c, | % 13
  d4\f r8 d8 a'4 d, |
  R8*7 | % 15
  b4 r8 b8 fs'4 |
  % -- C --
  e,4\f e4 b'4. | % 17
  e,4 e4 b'4. |
  c4 c4 g'4. |
  a,4 a4 e'4. |
  R1*2 | % 21-22
  R8*10 | % 23-24
  % -- D --
  g,4\ff r8 g8 d'4 g, | % 25
  ef'4 r8 ef8 bf'4 ef, |
  c4 r8 c8 g'4 c, |
  d4 r8 d8 a'4 d, |
  g,4 r8 g8 d'4 g, | % 29
  bf4 r8 bf8 f'4 bf, |
  ef4 r8 ef8 bf'4 ef, |
  R2. |
  % -- E --
  e,4.\f b'4 | % 33
  c4 c4 g'4. |
  a,4. e'4 |
  b4 b4 fs'4. |
  e,4\ff r8 e8 b'4 e, | % 37
  f4 r8 f8 c'4 f, |
  b4 r8 b8 fs'4 b, |
  e4->\fff r r2 | % 40
}

bassoonOne = \relative c {
  \clef bass
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  a'2\mf( d4. e8 | % 9
  f2 c) |
  d4.( g4 |
  g4. ef4) |
  f2\<( d4 f | % 13
  e2 g) |
  a4\f( g f4.) |
  e2. |
  % -- C --
  d,8\f-> d' d, a' d, a' d | % 17
  d,8-> d' d, a' d, a' d |
  bf8-> bf' bf, f' bf, f' bf |
  g,8-> g' g, d' g, d' g |
  R1*2 | % 21-22
  R8*10 | % 23-24
  % -- D --
  f,,4\ff r8 f8 c'4 f, | % 25
  df'4 r8 df8 af'4 df, |
  bf4 r8 bf8 f'4 bf, |
  c4 r8 c8 g'4 c, |
  f,4 r8 f8 c'4 f, | % 29
  af4 r8 af8 ef'4 af, |
  df4 r8 df8 af'4 df, |
  R2. |
  % -- E --
  d8\f-> a' d d, a' | % 33
  bf,8-> bf' bf, f' bf, f' bf |
  g,8-> d' g g, d' |
  a8-> a' a, e' a, e' a |
  d,8\ff-> d d' d, a' d, f a | % 37
  ef8-> ef ef' ef, bf' ef, g bf |
  a,8-> a a' a, e' a, cs e |
  d4->\fff r r2 | % 40
}

bassoonTwo = \relative c {
  \clef bass
  d,4\p r8 d8 a'4 d, | % 1
  d4 r8 d8 a'4 d, |
  bf'4 r8 bf8 f'4 bf, |
  a4 r8 a8 e'4 |
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
  d,8\f-> d' d, a' d, a' d | % 17
  d,8-> d' d, a' d, a' d |
  bf8-> bf' bf, f' bf, f' bf |
  g,8-> g' g, d' g, d' g |
  R1*2 | % 21-22
  R8*10 | % 23-24
  % -- D --
  f,4\ff r8 f8 c'4 f, | % 25
  df4 r8 df8 af'4 df, |
  bf'4 r8 bf8 f'4 bf, |
  c,4 r8 c8 g'4 c, |
  f4 r8 f8 c'4 f, | % 29
  af4 r8 af8 ef'4 af, |
  df,4 r8 df8 af'4 df, |
  R2. |
  % -- E --
  d8\f-> a' d d, a' | % 33
  bf8-> bf' bf, f' bf, f' bf |
  g,8-> d' g g, d' |
  a8-> a' a, e' a, e' a |
  d,,8\ff-> d d' d, a' d, f a | % 37
  ef8-> ef ef' ef, bf' ef, g bf |
  a8-> a a' a, e' a, cs e |
  d4->\fff r r2 | % 40
}

contrabassoon = \relative c {
  \transposition c
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
  d,4\f d4 a'4. | % 17
  d,4 d4 a'4. |
  bf4 bf4 f'4. |
  g,4 g4 d'4. |
  R1*2 | % 21-22
  R8*10 | % 23-24
  % -- D --
  f,4\ff r8 f8 c'4 f, | % 25
  df4 r8 df8 af'4 df, |
  bf'4 r8 bf8 f'4 bf, |
  c,4 r8 c8 g'4 c, |
  f'4 r8 f g,,4 c' | % 29
  af4 r8 af8 ef'4 af, |
  df,4 r8 df8 af'4 df, |
  R2. |
  % -- E --
  d4.\f a'4 | % 33
  bf4 bf4 f'4. |
  g,4. d'4 |
  a4 a4 e'4. |
  d,4\ff r8 d8 a'4 d, | % 37
  ef4 r8 ef8 bf'4 ef, |
  a4 r8 a8 e'4 a, |
  d4->\fff r r2 | % 40
}
