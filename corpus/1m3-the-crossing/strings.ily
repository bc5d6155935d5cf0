% Lanterns over Hesk -- 1m3  The Crossing
% Strings.  Typed with the German note names (b is B flat, h is B natural).

\version "2.24.0"
\language "deutsch"

violinOne = \relative c'' {
  R1.*4 | % 1-4
  % -- A --
  R1.*3 | % 5-7
  r2. r4. a4(\p c8) |
  d4\mp\espr( g8 b4 a8 g4. d4 f8 | % 9
  es4 c8 g'4 f8 es4. c) |
  a4( c8 fis,4.) |
  % -- B --
  g4\mf\espr( b8 d4 g8 f4. es4 d8 |
  f4. d4 b8 f2.) | % 13
  g4\<( b8 es4 g8 b4. a4 g8 |
  a4. f4 c8 a2.) |
  d8(\f f a d4. c4 a8 f4.) |
  b4( a8 g4. es4 f8 g4. | % 17
  fis2. a) |
  g4.( b4 g8 es4.) |
  fis4.\<( a4 c8 d4.) |
  % -- C --
  h2.\ff( d4. h4 a8 | % 21
  g2. e4. g) |
  c4.( h4 a8 g4. e) |
  fis4( g8 a4. d,2.) |
  h'4.( a4 g8 fis4. d) | % 25
  e4( g8 c4. h4 a8 e4.) |
  g4.\>( h a4 g8 cis,4.) |
  d4\mf( e8 fis4.) |
  % -- D --
  g2.(\p d4. h4 d8 | % 29
  es2. c4. g) |
  R1.*2 | % 31-32
  <d' h'>1.\pp\sulTasto ~ | % 33
  <d h'>1.\fermata | % 34
}

violinTwo = \relative c' {
  r8 <d g>\p\pizz <d g> r8 <d g> <d g> r8 <d g> <d g> r8 <d g> <d g> | % 1
  r8 <es g> <es g> r8 <es g> <es g> r8 <es g> <es g> r8 <es g> <es g> |
  r8 <d g> <d g> r8 <d g> <d g> r8 <d g> <d g> r8 <d g> <d g> |
  r8 <fis a> <fis a> r <fis a> <fis a> <fis a>4 r8 r4. |
  % -- A --
  R1.*2 | % 5-6
  r2. r4. a,4(\p\arco c8 |
  d2. fis) |
  g1.\mp ~ | % 9
  g2. es |
  fis4.( a4 c8) |
  % -- B --
  r4. d,4\mf( es8 f4. g |
  f2. d) | % 13
  es4.\<( g b c |
  c2.\f a) |
  f4.( a4 c8 d2.) |
  d4.( b c es | % 17
  d2. c) |
  b4.( g b |
  a2. fis4.) |
  % -- C --
  h2.\ff( d4. h4 a8 | % 21
  g2. e4. g) |
  c4.( h4 a8 g4. e) |
  fis4( g8 a4. d,2.) |
  h'4.( a4 g8 fis4. d) | % 25
  e4( g8 c4. h4 a8 e4.) |
  g4.\>( h a4 g8 cis,4.) |
  d4\mf( e8 fis4.) |
  % -- D --
  d'1.\p | % 29
  c2. g |
  r2. g4.(\pp d |
  es2. d) |
  g1.\sulTasto ~ | % 33
  g1.\fermata | % 34
}

viola = \relative c' {
  \clef alto
  r8 <d, g>\p\pizz <d g> r8 <d g> <d g> r8 <d g> <d g> r8 <d g> <d g> | % 1
  r8 <es g> <es g> r8 <es g> <es g> r8 <es g> <es g> r8 <es g> <es g> |
  r8 <d g> <d g> r8 <d g> <d g> r8 <d g> <d g> r8 <d g> <d g> |
  r8 <d fis> <d fis> r8 <d fis> <d fis> r8 <d fis> <d fis> r8 <d fis> <d fis> |
  % -- A --
  r8 <d g> <d g> r8 <d g> <d g> r8 <d g> <d g> r8 <d g> <d g> | % 5
  r8 <es g> <es g> r8 <es g> <es g> r8 <es g> <es g> r8 <es g> <es g> |
  r8 <es g> <es g> r8 <es g> <es g> r8 <f a> <f a> r8 <f a> <f a> |
  r8 <f b> <f b> r <f b> <f b> <a fis'>4 r8 r4. |
  r4. r4 b8\mp\arco( g4. b4. | % 9
  g2. es) |
  fis4.( d) |
  % -- B --
  d'1. |
  f2.( d4. h,) | % 13
  <es' g>1. |
  a,1. ~ |
  a1.\< |
  b2. es2. | % 17
  <a, fis'>1.:32\f |
  <b g'>2.:32 <b g'>4.:32 |
  <c a'>2.:32\< <c a'>4.:32 |
  % -- C --
  <h d>1.:32\ff | % 21
  <h e>1.:32 |
  <c e>1.:32 |
  <a d>1.:32 |
  <h d>2.:32 <h d>2.:32 | % 25
  <c e>2.:32 <a c>2.:32 |
  <h e>2.:32\> <a cis>2.:32 |
  << { a'4.\mf( c) } \\ { fis,2. } >> |
  % -- D --
  << { h2.\p( g) } \\ { d1. } >> | % 29
  << { g2.( es) } \\ { c1. } >> |
  <h d>1. |
  <b es>2.( <a d>) |
  <h d>1.\pp ~ | % 33
  <h d>1.\fermata | % 34
}

cello = \relative c {
  \clef bass
  g4\p d'8 g4 d8 g,4 d'8 g4 d8 | % 1
  g,4 es'8 g4 es8 g,4 es'8 b'4 g8 |
  g,4 d'8 g4 d8 g,4 d'8 g4 d8 |
  d,4 a'8 d4 a8 d,4 a'8 d4 a8 |
  % -- A --
  g4\mp d'8 g4 d8 g,4 d'8 g4 d8 | % 5
  es,4 b'8 es4 b8 es,4 b'8 es4 b8 |
  c,4 g'8 c4 g8 f4 c'8 f4 c8 |
  b4 f'8 b4 f8 d,4 a'8 d4 a8 |
  g4 d'8 g4 d8 g,4 d'8 g4 d8 | % 9
  c,4 g'8 c4 g8 c,4 g'8 c4 g8 |
  d'4( fis8 a4.) |
  % -- B --
  g,4\mf d'8 g4 d8 g,4 d'8 g4 d8 |
  b4 f'8 b4 f8 b,4 f'8 b4 f8 | % 13
  es,4 b'8 es4 b8 es,4 b'8 es4 b8 |
  f4 c'8 f4 c8 f,4 c'8 f4 c8 |
  d,4\< a'8 d4 a8 d,4 a'8 d4 a8 |
  g4 d'8 g4 d8 c,4 g'8 c4 g8 | % 17
  d'8\f( a' d fis d a d, a' d fis a fis) |
  es,8( b' es g es b es,4.) |
  d8\<( a' d fis a fis d4.) |
  % -- C --
  g,4.\ff\espr( h d h | % 21
  h2. g) |
  e4.( g c h |
  a2. fis) |
  g4.( h d h | % 25
  c2. a) |
  h4.\>( g cis e |
  d4.\mf c) |
  % -- D --
  <g, d'>1.\p | % 29
  <c g'>1. |
  <g d'>1. |
  es'2.( d) |
  <g, d'>1.\pp ~ | % 33
  <g d'>1.\fermata | % 34
}

doubleBass = \relative c {
  \transposition c
  \clef bass
  \repeat unfold 3 { g'4\p\pizz r8 r4. d'4 r8 r4. | } | % 1-3
  d4 r8 r4. a4 r8 r4. |
  % -- A --
  g,4\mp r8 r4. d'4 r8 r4. | % 5
  es4 r8 r4. b'4 r8 r4. |
  c,4 r8 r4. f,4 r8 r4. |
  b4 r8 r4. d4 r8 r4. |
  g,4 r8 r4. d'4 r8 r4. | % 9
  c'4 r8 r4. r2. |
  R2. |
  % -- B --
  g,2.\mf\arco d'2. |
  b2. f'2. | % 13
  es2. b'2. |
  f2. c'2. |
  d,2.\< a'2. |
  g,2. c2. | % 17
  d2.\f a'2. |
  es2. b'4. |
  d,2.\< a'4. |
  % -- C --
  g,2.\ff d'2. | % 21
  e2. h'2. |
  c,2. g'2. |
  d2. a'2. |
  g,2. h2. | % 25
  c2. a2. |
  e'2.\> a,2. |
  d4.\mf a'4. |
  % -- D --
  g1.\p | % 29
  c1. |
  g1. |
  es'2. d2. |
  g,1.\pp ~ | % 33
  g1.\fermata | % 34
}
