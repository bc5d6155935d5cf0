% Lanterns over Hesk -- 1m2  Across the Flats
% Strings

\version "2.24.0"
\language "english"

violinOne = \relative c'' {
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  r2 r8 a16(\mp b cs8) |
  % -- B --
  d4.\mf\espr( f8 a4 d | % 9
  c2 a4 f) |
  bf4.( d4 |
  ef4. bf4) |
  d4.\<( c8 bf4 a | % 13
  g4 c e2) |
  f4\f-- e-- d4.-- |
  cs2. |
  % -- C --
  d,8\f\marcato-. d-. a-. a-. d( e f) | % 17
  e8-. e-. a,-. a-. e'( d c) |
  d8-. d-. bf-. bf-. f'( g a) |
  g8-. g-. d-. d-. bf'( a g) |
  g2.\espr( f8 ef | % 21
  e2 cs) |
  d4.\mp a4 |
  bf4.\<( g4) |
  % -- D --
  f'2\ff\espr( c'4. bf8 | % 25
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
  ef'4-> r8 ef-. bf'4-> r |
  a,8-. a-. cs-. cs-. e-. e-. a4-> |
  <d,, a' f'>4->\fff r r2 | % 40
}

violinTwo = \relative c' {
  r2 r8 a'16-.\p a-. a8-. r | % 1
  r2 r8 a16-. a-. a8-. bf-. |
  r2 r8 bf16-. bf-. bf8-. r |
  cs4-> r8 cs16-. cs-. cs8-. r |
  % -- A --
  a8-.\mp a16 a a8-. r r4 d8-. r | % 5
  a8-. a16 a a8-. r r4 f'8-. r |
  bf,8-. bf16 bf bf8-. r r4 d8-. r |
  cs8-. cs16 cs cs8-. r e( cs a) |
  % -- B --
  d,4.\mf( f8 a4 d | % 9
  c2 a4 f) |
  bf4.( d4 |
  ef4. bf4) |
  d4.\<( c8 bf4 a | % 13
  g4 c e2) |
  f4\f-- e-- d4.-- |
  cs2. |
  % -- C --
  d8\f\marcato-. d-. a-. a-. d( e f) | % 17
  e8-. e-. a,-. a-. e'( d c) |
  d8-. d-. bf-. bf-. f'( g a) |
  g8-. g-. d-. d-. bf'( a g) |
  g2.( f8 ef) | % 21
  e4. r8 r2 |
  d8\mp\pizz a d f a, |
  bf8\< g c e g, |
  % -- D --
  f2\ff\espr( c'4. bf8 | % 25
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
  a4:32 cs:32 e:32 a4-> |
  <d,, a'>4->\fff r r2 | % 40
}

viola = \relative c' {
  \clef alto
  R1*3 | % 1-3
  R2. |
  % -- A --
  d,8\mp d d' d, a' d, f a | % 5
  d,8 d d' d, a' d, f a |
  g8 g g' g, d' g, bf d |
  a8 a' a, e' a, e' a |
  % -- B --
  a,2\mf\espr( d4. e8 | % 9
  f2 c) |
  d4.( g4 |
  g4. ef4) |
  f2\<( d4 f | % 13
  e2 g) |
  a4\f( g f4.) |
  e2 e8\pizz e |
  % -- C --
  r8 <d a'>-.\arco\f r <d a'>-. <d a'>4.-> | % 17
  r8 <e c'>-. r <e c'>-. <e c'>4.-> |
  r8 <d bf'>-. r <d bf'>-. <d bf'>4.-> |
  r8 <d bf'>-. r <d bf'>-. <d bf'>4.-> |
  ef4.-> ef8-. g4-> bf-> | % 21
  a2:16\< g2:16 |
  r8 <f a>-. r <f a>4-> |
  r8 <e bf'>-. r <e bf'>4-> |
  % -- D --
  af1:32\ff | % 25
  f1:32 |
  df1:32 |
  e1:32 |
  af1:32 | % 29
  af1:32 |
  f1:32\> |
  cs2.:32\mf\< |
  % -- E --
  d,8\f\marcato-> a' d d, a' | % 33
  bf8-> bf' bf, f' bf, f' bf |
  g,8-> d' g g, d' |
  a8-> a' a, e' a, e' a |
  d,,8\ff-> d d' d, a' d, f a | % 37
  ef8-> ef ef' ef, bf' ef, g bf |
  a8-> a a' a, e' a, cs e |
  <d, d'>4-> r r2 | % 40
}

cello = \relative c {
  \clef bass
  d,8\p-> d d' d, a' d, f a | % 1
  d,8-> d d' d, a' d, f a |
  bf8-> bf bf' bf, f' bf, d f |
  a,8-> a a' a, e' cs |
  % -- A --
  d,8\mp-> d d' d, a' d, f a | % 5
  d,8-> d d' d, a' d, f a |
  g8-> g g' g, d' g, bf d |
  a8\<-> a' a, e' a, e' a |
  % -- B --
  d,,8\mf-> d d' d, a' d, f a | % 9
  f8-> f f' f, c' f, a c |
  g8-> d' g g, d' |
  ef,8-> bf' ef ef, bf' |
  bf8-> bf bf' bf, f' bf, d f | % 13
  c8-> c c' c, g' c, e g |
  d,8-> d' d, a' d, a' d |
  a8-> a a' a, e' cs |
  % -- C --
  d,8\f-> d' d, a' d, a' d | % 17
  d,8-> d' d, a' d, a' d |
  bf8-> bf' bf, f' bf, f' bf |
  g,8-> g' g, d' g, d' g |
  ef,8-> ef ef' ef, bf' ef, g bf | % 21
  a8-> a a' a, e' a, cs e |
  d,8-> a' d d, a' |
  c,8\<-> g' c c, g' |
  % -- D --
  f4\ff r8 f8 c'4 f, | % 25
  df4 r8 df8 af'4 df, |
  bf'4 r8 bf8 f'4 bf, |
  c,4 r8 c8 g'4 c, |
  f4 r8 f8 c'4 f, | % 29
  af4 r8 af8 ef'4 af, |
  df,4 r8 df8 af'4 df, |
  a'4 r8 a8 e'4 |
  % -- E --
  d,8\f\marcato-> a' d d, a' | % 33
  bf8-> bf' bf, f' bf, f' bf |
  g,8-> d' g g, d' |
  a8-> a' a, e' a, e' a |
  d,,8\ff-> d d' d, a' d, f a | % 37
  ef8-> ef ef' ef, bf' ef, g bf |
  a8-> a a' a, e' a, cs e |
  d4-> r r2 | % 40
}

doubleBass = \relative c {
  \transposition c
  \clef bass
  d'4\p\pizz r r2 | % 1
  d4 r r a |
  bf4 r r2 |
  a4 r r |
  % -- A --
  d,4\mp r8 d8 a'4 d, | % 5
  d4 r8 d8 a'4 d, |
  g,4 r8 g8 d'4 g, |
  a'4 a r4. |
  % -- B --
  d,4 r8 d8 a'4 d, | % 9
  f,4 r8 f8 c'4 f, |
  g4. d'4 |
  ef4. bf'4 |
  bf,4\< r8 bf8 f'4 bf, | % 13
  c4\mf r8 c8 g'4 c, |
  d'4 r r4. |
  R2. |
  % -- C --
  d4\f\arco d a'4. | % 17
  d,,4 d4 a'4. |
  bf,4 bf4 f'4. |
  g,4 g4 d'4. |
  ef4 r8 ef8 bf'4 ef, | % 21
  a,4 r8 a8 e'4 a, |
  d4. a'4 |
  c,4.\< g'4 |
  % -- D --
  f,4\ff r8 f8 c'4 f, | % 25
  df'4 r8 df8 af'4 df, |
  bf4 r8 bf8 f'4 bf, |
  c4 r8 c8 g'4 c, |
  f,4 r8 f8 c'4 f, | % 29
  af4 r8 af8 ef'4 af, |
  df4 r8 df8 af'4 df, |
  a4 r8 a8 e'4 |
  % -- E --
  d4.\f\marcato a'4 | % 33
  bf,4 bf4 f'4. |
  g,4. d'4 |
  a4 a4 e'4. |
  d4\ff r8 d8 a'4 d, | % 37
  ef4 r8 ef8 bf'4 ef, |
  a,4 r8 a8 e'4 a, |
  d'4-> r r2 | % 40
}
