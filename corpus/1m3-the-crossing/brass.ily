% Lanterns over Hesk -- 1m3  The Crossing
% Brass in fixed octaves, score in C.  The parts transpose.

\version "2.24.0"
\language "nederlands"

hornOne = \fixed c' {
  R1.*4 | % 1-4
  % -- A --
  R1.*4 | % 5-8
  r2. g4.(\p bes | % 9
  g2. es) |
  R2. |
  % -- B --
  r4. d4\mf( es8 f4. g |
  f2. d) | % 13
  es4.\<( g bes c' |
  c'2.\f a) |
  f4.( a4 c'8 d'2.) |
  d'4.( bes c' es' | % 17
  d'2. c') |
  bes4.( g bes |
  a2. fis4.) |
  % -- C --
  g4.\ff\espr( b d' b | % 21
  b2. g) |
  e4.( g c' b |
  a2. fis) |
  g4.( b d' b | % 25
  c'2. a) |
  b4.(\> g cis' e' |
  d'4.\mf c') |
  % -- D --
  g2.(\p d4. b,4 d8 | % 29
  es2. c) |
  R1.*2 | % 31-32
  b,1.\ppp ~ | % 33
  b,1.\fermata | % 34
}

hornTwo = \fixed c' {
  R1.*4 | % 1-4
  % -- A --
  R1.*5 | % 5-9
  r2. es4.(\p c |
  d4.) r |
  % -- B --
  R1.*2 | % 12-13
  es4.\mf( g bes c' |
  c'2.\f a) |
  f4.( a4 c'8 d'2.) |
  bes4.( g g c' | % 17
  a2. fis) |
  g4.( es g |
  fis2. c4.) |
  % -- C --
  g4.\ff\espr( b d' b | % 21
  b2. g) |
  e4.( g c' b |
  a2. fis) |
  g4.( b d' b | % 25
  c'2. a) |
  g4.(\> e a cis' |
  a4.\mf fis) |
  % -- D --
  R1.*4 | % 29-32
  g,1.\ppp ~ | % 33
  g,1.\fermata | % 34
}

hornThree = \fixed c' {
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*4 | % 12-15
  d1.\mf |
  d2. es2. | % 17
  fis1.\f |
  es2.\< es4. |
  d2. d4. |
  % -- C --
  d1.\ff | % 21
  e1. |
  e1. |
  d1. |
  d2. d2. | % 25
  e2. e2. |
  e2.\> e2. |
  c4.\mf r |
  % -- D --
  b,1.\pp | % 29
  c2.\> g,2.\! |
  R1.*4 | % 31-34
}

hornFour = \fixed c' {
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*4 | % 12-15
  f,1.\mf |
  bes,2. c2. | % 17
  d1.\f |
  bes,2.\< bes,4. |
  a,2. a,4. |
  % -- C --
  b,1.\ff | % 21
  g,1. |
  g,1. |
  fis,1. |
  b,2. b,2. | % 25
  c2. c2. |
  g,2.\> cis2. |
  a,4.\mf r |
  % -- D --
  R1.*6 | % 29-34
}

trumpetOne = \fixed c' {
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*6 | % 12-17
  r2. d'4.(\mf a |
  bes4. g\< bes |
  a4. c' d') |
  % -- C --
  b2.(\ff\conSord d'4. b4 a8 | % 21
  g2. e4. g) |
  c'4.( b4 a8 g4.) r |
  r2. d8-.\senSord fis-. a-. d'4. |
  R1.*2 | % 25-26
  r2. a4.(\f g |
  fis4.\mf) r |
  % -- D --
  R1.*6 | % 29-34
}

trumpetTwo = \fixed c' {
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*6 | % 12-17
  r2. a4.(\mf fis |
  g4. es\< g |
  fis4. a a) |
  % -- C --
  g2.(\ff b4. g4 fis8 | % 21
  e2. e4. e) |
  g4.( g4 e8 e4.) r |
  r2. a,8-. d-. fis-. a4. |
  R1.*2 | % 25-26
  r2. e4.(\f e |
  d4.\mf) r |
  % -- D --
  R1.*6 | % 29-34
}

tromboneOne = \fixed c {
  \clef bass
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*4 | % 12-15
  d'1.\mf |
  d'2. es'2. | % 17
  d'1.\f |
  g2.\< g4. |
  fis2. fis4. |
  % -- C --
  b1.\ff | % 21
  b1. |
  c'1. |
  d'1. |
  d'2. d'2. | % 25
  e'2. e'2. |
  e'2.\> e'2. |
  fis4.\mf r |
  % -- D --
  R1.*4 | % 29-32
  d1.\ppp ~ | % 33
  d1.\fermata | % 34
}

tromboneTwo = \fixed c {
  \clef bass
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*4 | % 12-15
  f1.\mf |
  bes2. c'2. | % 17
  fis1.\f |
  es2.\< es4. |
  d2. d4. |
  % -- C --
  g1.\ff | % 21
  g1. |
  e1. |
  fis1. |
  b2. b2. | % 25
  c'2. c'2. |
  g2.\> cis2. |
  d4.\mf r |
  % -- D --
  R1.*4 | % 29-32
  b,1.\ppp ~ | % 33
  b,1.\fermata | % 34
}

bassTrombone = \fixed c {
  \clef bass
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*4 | % 12-15
  d,2.\mf a,2. |
  g,2. c,2. | % 17
  d,2.\f a,2. |
  es2.\< bes,4. |
  d2. a,4. |
  % -- C --
  g,2.\ff d2. | % 21
  e,2. b,2. |
  c,2. g,2. |
  d,2. a,2. |
  g,2. b,2. | % 25
  c,2. a,2. |
  e,2.\> a,2. |
  d4.\mf r |
  % -- D --
  R1.*4 | % 29-32
  g,1.\ppp ~ | % 33
  g,1.\fermata | % 34
}

tuba = \fixed c, {
  \clef bass
  R1.*4 | % 1-4
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*7 | % 12-18
  es'2.\mf\< bes4. |
  d'2. a4. |
  % -- C --
  g,2.\ff d2. | % 21
  e2. b2. |
  c2. g2. |
  d2. a2. |
  g,2. b,2. | % 25
  c2. a,2. |
  e2.\> a,2. |
  d'4.\mf r |
  % -- D --
  R1.*6 | % 29-34
}
