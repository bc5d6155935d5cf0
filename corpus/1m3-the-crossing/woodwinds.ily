% Lanterns over Hesk -- 1m3  The Crossing
% Woodwinds.  Score in C; the parts transpose.

\version "2.24.0"
\language "nederlands"

piccolo = \relative c'' {
  \transposition c''
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*7 | % 12-18
  r2. g'16(\f bes es bes g es) |
  r4. c16(\< d fis a c d fis, a c d c a) |
  % -- C --
  b2.(\ff d4. b4 a8 | % 21
  g2.) r |
  R1. |
  r2. r4. d16(\f e fis g a b |
  d8-.) r r r4. r2. | % 25
  R1.*2 | % 26-27
  R2. |
  % -- D --
  R1.*6 | % 29-34
}

fluteOne = \relative c'' {
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  g4\mf( bes8 d4 g8 f4. es4 d8 |
  f4. d4 bes8 f2. | % 13
  g4\< bes8 es4 g8 bes4. a4 g8 |
  a4. f4 c8 a2. |
  d8\f f a d4. c4 a8 f4. |
  bes4 a8 g4. es4 f8 g4. | % 17
  fis2. a |
  g4. bes4 g8 es4. |
  fis4.\< a4 c8 d4.) |
  % -- C --
  b2.\ff( d4. b4 a8 | % 21
  g2. e4. g) |
  c4.( b4 a8 g4. e) |
  fis4( g8 a4. d,2.) |
  d16( g b d g b) g8-. r r d,16( fis b d fis b) fis8-. r r | % 25
  c,16( e g c e g) e8-. r r c,16( e a c e a) e8-. r r |
  e,16( g b e g b) g8-. r r cis,,16( e a cis e a) e8-. r r |
  d4.\mf r |
  % -- D --
  R1.*4 | % 29-32
  r4. d,4(\pp g8 b2. ~ | % 33
  b1.)\fermata | % 34
}

fluteTwo = \relative c'' {
  R1.*4 | % 1-4
  % -- A --
  R1. |
  r2. r4. \grace { es16( f } g4)\p f8 |
  R1.*4 | % 7-10
  R2. |
  % -- B --
  R1.*3 | % 12-14
  c16\mf( f a c f a) f8-. r r c,16( f a c f a) f8-. r r |
  R1. |
  bes,,16\f( d g bes d g) d8-. r r c,16( es g c es g) es8-. r r | % 17
  R1. | % 18
  R8*9 |
  r4. c,16(\f\< d fis a c d fis, a c d c a) |
  % -- C --
  b2.\ff( d4. b4 a8 | % 21
  g2. e4. g) |
  c4.( b4 a8 g4. e) |
  fis4( g8 a4. d,2.) |
  g,16( b d g b d) b8-. r r b,16( d fis b d fis) d8-. r r | % 25
  g,,16( c e g c e) c8-. r r a,16( c e a c e) c8-. r r |
  g,16( b e g b e) b8-. r r a,16( cis e a cis e) cis8-. r r |
  fis,4.\mf r |
  % -- D --
  R1.*6 | % 29-34
}

oboeOne = \relative c'' {
  R1.*4 | % 1-4
  % -- A --
  R1.*4 | % 5-8
  d4(\mp\espr g8 bes4 a8 g4. d4 f8 | % 9
  es4\> c8 g'4 f8 es4. c) |
  a4(\p c8 fis,4.) |
  % -- B --
  r4. d4\mf( es8 f4. g |
  f2. d) | % 13
  es4.\<( g bes c |
  c2.\f a) |
  d8\f( f a d4. c4 a8 f4.) |
  bes4( a8 g4. es4 f8 g4. | % 17
  fis2. a4.) r |
  g4.( bes4 g8 es4.) |
  fis4.(\< a4.) r |
  % -- C --
  b,2.\ff( d4. b4 a8 | % 21
  g2. e4. g) |
  c4.( b4 a8 g4. e) |
  fis4( g8 a4. d,2.) |
  b'4.( a4 g8 fis4. d) | % 25
  e4( g8 c4. b4 a8 e4.) |
  g4.\>( b a4 g8 cis,4.) |
  d4\mf( e8 fis4.) |
  % -- D --
  R1.*6 | % 29-34
}

oboeTwo = \relative c'' {
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*4 | % 12-15
  f,4.(\f a4 c8 d2.) |
  d4.( bes c es | % 17
  d2. c4.) r |
  bes4.(\f g bes |
  a2.\< fis4.) |
  % -- C --
  g4.\ff( b d b | % 21
  b2. g) |
  e4.( g c b |
  a2. fis) |
  g4.( b d b | % 25
  c2. a) |
  b4.\>( g cis e |
  d4.\mf c) |
  % -- D --
  R1.*6 | % 29-34
}

corAnglais = \relative c' {
  R1.*4 | % 1-4
  % -- A --
  d4\mp\espr^"solo"( g8 bes4 a8 g4. d4 f8 | % 5
  es4\< g8 bes4 c8 bes4. g) |
  c4\mf\>( es8 d4 c8 c4 a8 f4.) |
  d'4\p( bes8 f4 bes8 fis4 g8 a4.) |
  R1. | % 9
  r2. es4.(\p d,4. |
  fis'4.) r |
  % -- B --
  R1.*7 | % 12-18
  R8*18 | % 19-20
  % -- C --
  g4.\ff( b d b | % 21
  b2. g) |
  e4.( g c b |
  a2. fis) |
  g4.( b d b | % 25
  c2. a) |
  b4.\>( g cis e |
  d4.\mf c) |
  % -- D --
  R1.*2 | % 29-30
  d,4(\p g8 b4 a8 g4. d) |
  es4( g8 bes4. a4 fis8 d4.) |
  R1.*2 | % 33-34
}

clarinetOne = \relative c' {
  r2. r4. d4(\pp es8 | % 1
  g2. es4.) bes4( d8 |
  g2. d4.) d4( g8 |
  fis2. a4.) r |
  % -- A --
  R1.*2 | % 5-6
  r2. a4(\p c8 f4.) |
  r2. fis,4( g8 a4.) |
  bes1.(\p | % 9
  g2. es |
  d4. c) |
  % -- B --
  R1.*2 | % 12-13
  bes16\mf( es g bes es g) es8-. r r bes,16( es g bes es g) es8-. r r |
  c,16( f a c f a) f8-. r r c,16( f a c f a) f8-. r r |
  d,16\f( f a d f a) f8-. r r d,16( f a d f a) f8-. r r |
  bes,,16( d g bes d g) d8-. r r c,16( es g c es g) es8-. r r | % 17
  fis,2.(\f a4.) r |
  R8*9 |
  r4. c,16(\f\< d fis a c d fis, a c d c a) |
  % -- C --
  g4.\ff( b d b | % 21
  b2. g) |
  e4.( g c b |
  a2. fis) |
  d16( g b d g b) g8-. r r d,16( fis b d fis b) fis8-. r r | % 25
  e,16( g c e g c) g8-. r r e,16( a c e a c) a8-. r r |
  e,16( g b e g b) g8-. r r e,16( a cis e a cis) a8-. r r |
  a,4.\mf r |
  % -- D --
  R1.*2 | % 29-30
  r2. b,2.(\pp |
  bes2. a) |
  b1.\pp ~ | % 33
  b1.\fermata | % 34
}

clarinetTwo = \relative c' {
  r2. r4. bes4(\pp bes8 | % 1
  bes2. g4.) r |
  r2. r4. bes4( bes8 |
  a2. fis'4.) r |
  % -- A --
  R1.*4 | % 5-8
  g1.(\p | % 9
  es2. c |
  a4. fis) |
  % -- B --
  r4. bes4(\mf c8 d4. es |
  d2. bes) | % 13
  R1.*4 | % 14-17
  d2.(\f c4.) r |
  bes'4.(\f g bes |
  a2.\< fis4.) |
  % -- C --
  g4.\ff( b d b | % 21
  b2. g) |
  e4.( g c b |
  a2. fis) |
  g,16( b d g b d) b8-. r r b,16( d fis b d fis) d8-. r r | % 25
  g,,16( c e g c e) c8-. r r a,16( c e a c e) c8-. r r |
  g,16( b e g b e) b8-. r r a,16( cis e a cis e) cis8-. r r |
  fis,4.\mf r |
  % -- D --
  R1.*4 | % 29-32
  g,1.\pp ~ | % 33
  g1.\fermata | % 34
}

bassClarinet = \relative c {
  \clef bass
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*2 | % 12-13
  es,2.\mf bes'2. |
  f2. c'2. |
  d,2.\< a'2. |
  g2. c,2. | % 17
  d2.\f a'2. |
  es'2.( bes4.) |
  d2.( a4.) |
  % -- C --
  g2.\ff d'2. | % 21
  e,2. b'2. |
  c,2. g'2. |
  d2. a'2. |
  g2. b2. | % 25
  c,2. a'2. |
  e2.\> a2. |
  d4.\mf r |
  % -- D --
  R1.*4 | % 29-32
  g,1.\pp ~ | % 33
  g1.\fermata | % 34
}

bassoonOne = \relative c {
  \clef bass
  R1.*4 | % 1-4
  % -- A --
  g'2.(\p d | % 5
  es2. bes) |
  c2.( f) |
  bes,2.( d) |
  d'1.(\p | % 9
  c2. g |
  fis4. a) |
  % -- B --
  g,2.\mf d'2. |
  bes2. f'2. | % 13
  es,2. bes'2. |
  f2. c'2. |
  d,2.\< a'2. |
  g2. c2. | % 17
  d,2.\f a'2. |
  es'2.( bes4.) |
  d2.( a4.) |
  % -- C --
  g2.\ff d'2. | % 21
  e,2. b'2. |
  c2. g'2. |
  d,2. a'2. |
  g2. b2. | % 25
  c2. a2. |
  e2.\> a2. |
  d4.\mf r |
  % -- D --
  R1.*6 | % 29-34
}

bassoonTwo = \relative c {
  \clef bass
  R1.*4 | % 1-4
  % -- A --
  R1.*2 | % 5-6
  c2.(\p f,) |
  bes2.( d) |
  g1.(\p | % 9
  es2. c |
  d2.) |
  % -- B --
  g,2.\mf d'2. |
  bes2. f'2. | % 13
  es,2. bes'2. |
  f2. c'2. |
  d,2.\< a'2. |
  g2. c,2. | % 17
  d2.\f a'2. |
  es'2.( bes4.) |
  d2.( a4.) |
  % -- C --
  g2.\ff d'2. | % 21
  e,2. b'2. |
  c,2. g'2. |
  d2. a'2. |
  g2. b2. | % 25
  c,2. a'2. |
  e2.\> a2. |
  d4.\mf r |
  % -- D --
  R1.*6 | % 29-34
}
