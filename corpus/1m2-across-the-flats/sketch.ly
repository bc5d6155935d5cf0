% 1m2  Across the Flats -- composer's sketch

\version "2.24.0"
\include "../common.ily"
\include "global.ily"
\language "english"

melody = \relative c'' {
  R1*3 | % 1-3
  R2. |
  % -- A --
  d,2\mp^"cl."( a'4. g8 | % 5
  f4 e d2) |
  bf'2.( a8 g |
  a4 g e4.) |
  % -- B --
  d4.\mf^"vlns 8va, hns"( f8 a4 d | % 9
  c2 a4 f) |
  bf4.( d4 |
  ef4. bf4) |
  d4.( c8 bf4 a | % 13
  g4 c e2) |
  f4\f-- e-- d4.-- |
  cs2. |
  % -- C --
  d8\f^"w.w., vlns"-. d-. a-. a-. d( e f) | % 17
  e8-. e-. a,-. a-. e'( d c) |
  d8-. d-. bf-. bf-. f'( g a) |
  g8-. g-. d-. d-. bf'( a g) |
  g2.( f8 ef | % 21
  e2 cs) |
  d4.\mp a4 |
  bf4.( g4) |
  % -- D --
  f'2\ff^"vlns, fl."( c'4. bf8 | % 25
  af4 g f2) |
  df'2.( c8 bf |
  c2 g) |
  f4.( g8 af4 c | % 29
  ef2 c4 af) |
  df2\>( bf4 f |
  e2.\mf) |
  % -- E --
  d8\f^"tutti"-. d-. d-. a4-> | % 33
  bf8-. bf-. d-. d-. f4.-> |
  g8-. g-. g-. d4-> |
  a'8-. a-. e-. e-. cs4.-> |
  d4\ff-> r8 d-. a4-> r8 a-. | % 37
  ef'4-> r8 ef-. bf4-> r |
  a8-. a-. cs-. cs-. e-. e-. a4-> |
  d,4\fff-> r r2 | % 40
}

counter = \relative c' {
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  a2\mf^"va., bn."( d4. e8 | % 9
  f2 c) |
  d4.( g4 |
  g4. ef4) |
  f2( d4 f | % 13
  e2 g) |
  a4\f( g f4.) |
  e2. |
  % -- C --
  R8*28 | % 17-20
  R1*2 | % 21-22
  R8*10 | % 23-24
  % -- D --
  r4 af4\ff^"hns"( g f | % 25
  f2 af4 df) |
  f,2.( g8 af |
  g2 e) |
  af2( c4 af | % 29
  c2 ef4 c) |
  f,2\>( af4 df |
  cs2.\mf) |
  % -- E --
  R8*5 | % 33
  R8*7 |
  R8*5 |
  R8*7 | % 36
  R1*4 | % 37-40
}

harmony = \relative c' {
  R1*3 | % 1-3
  R2. |
  % -- A --
  <a d f>1\p | % 5
  <a d f>1 |
  <bf d g>1 |
  <a cs e>2 ~ <a cs e>4. |
  % -- B --
  <a d f>1\mf | % 9
  <a c f>1 |
  <bf d g>4. ~ <bf d g>4 |
  <bf ef g>4. ~ <bf ef g>4 |
  <bf d f>1 | % 13
  <c e g>1 |
  <a d f>2 ~ <a d f>4. |
  <a cs e>2. |
  % -- C --
  <a d f>2\f^"brass stabs, off the beat" ~ <a d f>4. | % 17
  <a d f>2 ~ <a d f>4. |
  <bf d f>2 ~ <bf d f>4. |
  <bf d g>2 ~ <bf d g>4. |
  <bf ef g>1 | % 21
  <a cs e>1 |
  <a d f>4. ~ <a d f>4 |
  <bf c e>4. ~ <bf c e>4 |
  % -- D --
  <c f af>1\ff^"tbns" | % 25
  <df f af>1 |
  <bf df f>1 |
  <c e g>1 |
  <c f af>1 | % 29
  <c ef af>1 |
  <df f af>1 |
  <a cs e>2. |
  % -- E --
  <a d f>4.\f ~ <a d f>4 | % 33
  <bf d f>2 ~ <bf d f>4. |
  <bf d g>4. ~ <bf d g>4 |
  <a cs e>2 ~ <a cs e>4. |
  <a d f>1\ff | % 37
  <bf ef g>1 |
  <a cs e>1 |
  <f' a d>4-> r r2 | % 40
}

harpLine = \relative c' {
  R1*3 | % 1-3
  R2. |
  % -- A --
  R1*3 | % 5-7
  R8*7 |
  % -- B --
  \clef bass d,,16\mf f a d \clef treble f a d f a d a f d a f d | % 9
  \clef bass f,16 a c f \clef treble a c f a c f c a f c a f |
  \clef bass g,16 bf d g \clef treble bf d g bf d g |
  \clef bass ef,,,16 bf' ef bf' \clef treble ef bf' ef bf ef, bf |
  << { r8 f'8 bf d f d bf f } \\ { <bf,, f'>1 } >> | % 13
  << { r8 e' g c e c g e } \\ { <c, g'>1 } >> |
  R8*7 | % 15
  R2. |
  % -- C --
  R8*28 | % 17-20
  R1*2 | % 21-22
  R8*10 | % 23-24
  % -- D --
  \clef bass f,16\ff af c f \clef treble af c f af c f c af f c af f | % 25
  \clef bass df,16 f af df \clef treble f af df f af df af f df af f df |
  \clef bass bf,16 df f bf \clef treble df f bf df f bf f df bf f df bf |
  R1 |
  \clef bass f16 af c f \clef treble af c f af c f c af f c af f | % 29
  \clef bass af,16 c ef af \clef treble c ef af c ef af ef c af ef c af |
  R1 |
  R2. |
  % -- E --
  R8*5 | % 33
  R8*7 |
  R8*5 |
  R8*7 | % 36
  R1*4 | % 37-40
}

motor = \relative c {
  \clef bass
  d,8\p^"vc., pno."-> d d' d, a' d, f a | % 1
  d,8-> d d' d, a' d, f a |
  bf8-> bf bf' bf, f' bf, d f |
  a,8-> a a' a, e' cs |
  % -- A --
  d,8-> d d' d, a' d, f a | % 5
  d,8-> d d' d, a' d, f a |
  g8-> g g' g, d' g, bf d |
  a8-> a' a, e' a, e' a |
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
  c8-> g' c c, g' |
  % -- D --
  R1*7 | % 25-31
  R2. |
  % -- E --
  d,8\f-> a' d d, a' | % 33
  bf8-> bf' bf, f' bf, f' bf |
  g,8-> d' g g, d' |
  a8-> a' a, e' a, e' a |
  d,,8-> d d' d, a' d, f a | % 37
  ef8-> ef ef' ef, bf' ef, g bf |
  a8-> a a' a, e' a, cs e |
  R1 |
}

bassLine = \relative c, {
  \clef bass
  R1*3 | % 1-3
  R2. |
  % -- A --
  d4\mp r8 d8 a'4 d, | % 5
  d4 r8 d8 a'4 d, |
  g,4 r8 g8 d'4 g, |
  a4 a4 e'4. |
  % -- B --
  d4 r8 d8 a'4 d, | % 9
  f,4 r8 f8 c'4 f, |
  g4. d'4 |
  ef4. bf'4 |
  bf,4 r8 bf8 f'4 bf, | % 13
  c4 r8 c8 g'4 c, |
  d4 d4 a'4. |
  a,4 r8 a8 e'4 |
  % -- C --
  d4\f d4 a'4. | % 17
  d,4 d4 a'4. |
  bf,4 bf4 f'4. |
  g,4 g4 d'4. |
  ef4 r8 ef8 bf'4 ef, | % 21
  a,4 r8 a8 e'4 a, |
  d4. a'4 |
  c,4. g'4 |
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
  d4. a'4 | % 33
  bf,4 bf4 f'4. |
  g,4. d'4 |
  a4 a4 e'4. |
  d4 r8 d8 a'4 d, | % 37
  ef4 r8 ef8 bf'4 ef, |
  a,4 r8 a8 e'4 a, |
  d4->\fff r r2 | % 40
}

#(set-global-staff-size 16)

\header {
  title = "1m2  Across the Flats"
  instrument = "Sketch"
}

\score {
  \new StaffGroup <<
    \new Staff = "skmel" \with {
      instrumentName = "Melody"
      shortInstrumentName = "Mel."
    } << \global \melody >>
    \new Staff = "skctr" \with {
      instrumentName = "Counter"
      shortInstrumentName = "Ctr."
    } << \global \counter >>
    \new Staff = "skharm" \with {
      instrumentName = "Harmony"
      shortInstrumentName = "Harm."
    } << \global \harmony >>
    \new Staff = "skharp" \with {
      instrumentName = "Harp"
      shortInstrumentName = "Hp."
    } << \global \harpLine >>
    \new Staff = "skost" \with {
      instrumentName = "Motor"
      shortInstrumentName = "Mot."
    } << \global \motor >>
    \new Staff = "skbass" \with {
      instrumentName = "Bass"
      shortInstrumentName = "Bass"
    } << \global \bassLine >>
  >>
  \layout { }
  \midi { }
}
