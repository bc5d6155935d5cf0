% Lanterns over Hesk -- 1m2  Across the Flats
% Timpani, one percussion player (snare drum, bass drum, cymbal), xylophone

\version "2.24.0"
\language "english"

timpani = \relative c {
  \clef bass
  d4\p\hardMallets r r2 | % 1
  d4 r r a8 a |
  R1 | % 3
  a4 r a8 a |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  d4\mf r8 d d4 r | % 9
  d4 r r2 |
  R8*10 | % 11-12
  R1*2 | % 13-14
  R8*7 | % 15
  a2.:32\mp\< |
  % -- C --
  d8\f d r d r d d | % 17
  d8 d r d r4. |
  d8 d r d d4. |
  d8 d r d d4. |
  R1 | % 21
  a1:32\mp\< |
  d4.\f r4 |
  R8*5 | % 24
  % -- D --
  f4\ff r8 f c4 r | % 25
  f4 r r8 f f4 |
  R1 | % 27
  c4 r8 c c4 c |
  f4 r8 f c4 f | % 29
  R1*2 | % 30-31
  a,2.:32\mp\< |
  % -- E --
  d8\f d d a4-> | % 33
  d8 d d d d4.-> |
  d8 d d a4-> |
  a8\< a a a a4.:32 |
  d4->\ff r8 d a4-> r8 a | % 37
  a4-> r8 a a4-> r |
  a1:32\< |
  d4->\fff r r2 | % 40
}

percussionOne = \drummode {
  \repeat percent 3 { sn8->\p sn16 sn sn8 sn sn-> sn sn16 sn sn8 | } | % 1-3
  sn8-> sn sn16 sn sn8 sn4:32 |
  % -- A --
  bd4\mp r r8 sn sn4 | % 5
  bd4 r r8 sn16 sn sn4 |
  bd4 r r8 sn sn4 |
  sn8-> sn sn-> sn sn16 sn sn sn sn sn |
  % -- B --
  bd4\mf r8 sn bd4 sn | % 9
  bd4 r8 sn bd4 sn16 sn sn sn |
  bd4. sn4 |
  bd4. sn8 sn |
  bd4 sn bd sn | % 13
  bd4 sn bd8 sn16 sn sn sn sn sn |
  sn8-> sn sn-> sn sn-> sn sn |
  cymc2.:32\mp\< |
  % -- C --
  <bd cymc>8->\f sn bd sn bd sn sn | % 17
  bd8-> sn bd sn bd sn sn |
  bd8-> sn bd sn bd sn sn |
  bd8-> sn bd sn bd sn sn |
  <bd cymc>2 bd | % 21
  cymc1:32\p\< |
  bd4.\f sn8 sn |
  sn16\< sn sn sn sn sn sn sn sn sn |
  % -- D --
  <bd cymc>2\ff bd4 r | % 25
  bd2 bd4 sn8 sn |
  <bd cymc>2 bd4 r |
  bd2 sn4:32 sn |
  <bd cymc>2 bd | % 29
  bd2 bd4 sn |
  <bd cymc>2\> bd |
  sn2.:32\p\< |
  % -- E --
  bd8->\f sn sn bd4-> | % 33
  bd8-> sn sn sn bd4.-> |
  bd8-> sn sn bd4-> |
  sn8->\< sn sn-> sn sn4.:32 |
  <bd cymc>4->\ff r8 sn bd4-> r8 sn | % 37
  <bd cymc>4-> r8 sn bd4-> r |
  sn1:32\< |
  <bd cymc>4->\fff r r2 | % 40
}

xylophone = \relative c'' {
  \transposition c''
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  r2 e8\mf cs a |
  % -- B --
  d4 r r2 | % 9
  R1 |
  R8*10 | % 11-12
  R1*2 | % 13-14
  R8*7 | % 15
  R2. |
  % -- C --
  d8\f d a a d e f | % 17
  e8 e a, a e' d c |
  d8 d bf bf f' g a |
  g8 g d d bf' a g |
  g4 r r2 | % 21
  R1 |
  R8*5 |
  r4. c,16\mf d e g |
  % -- D --
  f4\ff r r2 | % 25
  R1*2 | % 26-27
  r2 g16 af bf c e g bf d |
  c,4 r r2 | % 29
  R1*2 | % 30-31
  R2. |
  % -- E --
  d,8\f d d a4 | % 33
  bf8 bf d d f4. |
  g8 g g d4 |
  a'8 a e e cs4. |
  d4\ff r8 d a4 r8 a | % 37
  ef'4 r8 ef bf4 r |
  a8 a cs cs e e a4 |
  d4\fff r r2 | % 40
}
