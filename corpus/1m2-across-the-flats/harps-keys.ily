% Lanterns over Hesk -- 1m2  Across the Flats
% Harps and piano in absolute pitches.  Harp 1 is one line, hands not yet shared out.

\version "2.24.0"
\language "english"

harpOne = {
  R1*3 | % 1-3
  R2. |
  % -- A --
  d,8->\mp a, d f a d' f' a' | % 5
  d,8-> a, d f a d' f' d'' |
  g,8-> d g bf d' g' bf' d'' |
  <a, e a cs' e' a' cs''>4\arpeggio r r4. |
  % -- B --
  \clef bass d,16\mf f, a, d \clef treble f a d' f' a' d'' a' f' d' a f d | % 9
  \clef bass f,16 a, c f \clef treble a c' f' a' c'' f'' c'' a' f' c' a f |
  \clef bass g,16 bf, d g \clef treble bf d' g' bf' d'' g'' |
  \clef bass ef,16 bf, ef bf \clef treble ef' bf' ef'' bf' ef' bf |
  << { r8 f'8 bf' d'' f'' d'' bf' f' } \\ { <bf, f>1 } >> | % 13
  << { r8 e' g' c'' e'' c'' g' e' } \\ { <c g>1 } >> |
  <d a d' f' a' d''>4\arpeggio <d a d' e' g' c''>\arpeggio <d a d' f' a' d''>4.\arpeggio |
  \clef treble a16\< cs' e' a' cs'' e'' a'' cs''' e''' cs''' a'' e'' |
  % -- C --
  <d a f' a' d''>8->\f r r4 <d a f' a' d''>4.-> | % 17
  <d a e' a' c''>8-> r r4 <d a e' a' c''>4.-> |
  <bf, f d' f' bf'>8-> r r4 <bf, f d' f' bf'>4.-> |
  <g, d bf d' g'>8-> r r4 <g, d bf d' g'>4.-> |
  <ef, bf, ef g bf ef' g' bf'>2\arpeggio <ef, bf, g bf ef'>2 | % 21
  \clef treble a'16\< bf' b' c'' cs'' d'' ef'' e'' f'' fs'' g'' gs'' a'' bf'' b'' c''' |
  d'8 a' d'' f'' a'' |
  c'8 e' g' bf' c'' |
  % -- D --
  \clef bass f,16\ff af, c f \clef treble af c' f' af' c'' f'' c'' af' f' c' af f | % 25
  \clef bass df,16 f, af, df \clef treble f af df' f' af' df'' af' f' df' af f df |
  \clef bass bf,,16 df, f, bf, \clef treble df f bf df' f' bf' f' df' bf f df bf, |
  <c g e' g' c'' e''>4\arpeggio c\glissando c'''2 |
  \clef bass f,16 af, c f \clef treble af c' f' af' c'' f'' c'' af' f' c' af f | % 29
  \clef bass af,16 c ef af \clef treble c' ef' af' c'' ef'' af'' ef'' c'' af' ef' c' af |
  \clef bass \tuplet 6/4 4 { df16\> af df' f' af' df'' \clef treble f' af' df'' f'' af'' df''' } af''8 f'' df'' af' |
  <a, e a cs' e' a'>2.\arpeggio\mp |
  % -- E --
  R8*5 | % 33
  R8*7 |
  R8*5 |
  R8*7 | % 36
  <d a d' f' a' d''>4->\ff r r2 | % 37
  <ef bf ef' g' bf' ef''>4-> r r2 |
  <a, e a cs' e' a'>4-> r a\glissando a'''4 |
  <d, a, d f a d' f' a'>4->\fff r r2 | % 40
}

harpTwoUpper = {
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
  R1*2 | % 21-22
  R8*10 | % 23-24
  % -- D --
  <c' f' af'>4\f <f' af' c''> <af' c'' f''> <f' af' c''> | % 25
  <df' f' af'>4 <f' af' df''> <af' df'' f''> <f' af' df''> |
  <df' f' bf'>4 <f' bf' df''> <bf' df'' f''> <f' bf' df''> |
  <c' e' g'>4 <e' g' c''> <g' c'' e''> <e' g' c''> |
  <c' f' af'>4 <f' af' c''> <af' c'' f''> <f' af' c''> | % 29
  <c' ef' af'>4 <ef' af' c''> <af' c'' ef''> <ef' af' c''> |
  <df' f' af'>4 <f' af' df''> <af' df'' f''> <f' af' df''> |
  <cs' e' a'>2.\arpeggio\mp |
  % -- E --
  R8*5 | % 33
  R8*7 |
  R8*5 |
  R8*7 | % 36
  R1*3 | % 37-39
  <d' f' a' d''>4->\fff r r2 | % 40
}

harpTwoLower = {
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
  R1*2 | % 21-22
  R8*10 | % 23-24
  % -- D --
  f,4\f <f c'> c <f c'> | % 25
  df,4 <df af> af, <df af> |
  bf,4 <bf f'> f <bf f'> |
  c,4 <c g> g, <c g> |
  f,4 <f c'> c <f c'> | % 29
  af,4 <af ef'> ef <af ef'> |
  df,4 <df af> af, <df af> |
  <a, e a>2.\arpeggio\mp |
  % -- E --
  R8*5 | % 33
  R8*7 |
  R8*5 |
  R8*7 | % 36
  R1*3 | % 37-39
  <d, a, d>4->\fff r r2 | % 40
}

pianoUpper = {
  d8\p d d' d a d f a | % 1
  d8 d d' d a d f a |
  bf8 bf bf' bf f' bf d' f' |
  a8 a a' a e' cs' |
  % -- A --
  d8\mp d d' d a d f a | % 5
  d8 d d' d a d f a |
  g8 g g' g d' g bf d' |
  a8 a' a e' a e' a' |
  % -- B --
  <d' f' a'>8-.\mf r <d' f' a'>-. r r4 <f' a' d''>8-. r | % 9
  <c' f' a'>8-. r <c' f' a'>-. r r4 <f' a' c''>8-. r |
  <d' g' bf'>4.-> <d' g' bf'>4-> |
  <ef' g' bf'>4.-> <ef' g' bf'>4-> |
  <d' f' bf'>4-> r8 <d' f' bf'> <f' bf' d''>4-> r | % 13
  <e' g' c''>4-> r8 <e' g' c''> <g' c'' e''>4-> r |
  <a' d'' f''>4-> <g' c'' e''>-> <f' a' d''>4.-> |
  <e' a' cs''>2.\< |
  % -- C --
  d8\f d' d a d a d' | % 17
  d8 d' d a d a d' |
  bf8 bf' bf f' bf f' bf' |
  g8 g' g d' g d' g' |
  <g' bf' ef'' g''>2.-> <f' f''>8 <ef' ef''> | % 21
  <e' a' cs'' e''>2\< <cs' g' a' cs''>\f |
  R8*10 | % 23-24
  % -- D --
  R1*7 | % 25-31
  R2. |
  % -- E --
  d8\f a d' d a | % 33
  bf8 bf' bf f' bf f' bf' |
  g8 d' g' g d' |
  a8 a' a e' a e' a' |
  <d' f' a' d''>4->\ff r8 <d' f' a' d''> <a d' f' a'>4-> r8 <a d' f' a'> | % 37
  <ef' g' bf' ef''>4-> r8 <ef' g' bf' ef''> <bf ef' g' bf'>4-> r |
  <a cs' e' a'>8 <a cs' e' a'> <cs' e' a' cs''> <cs' e' a' cs''> <e' a' cs'' e''> <e' a' cs'' e''> <a' cs'' e'' a''>4-> |
  <d' f' a' d'' f'' a'' d'''>4->\fff r r2 | % 40
}

pianoLower = {
  \clef bass
  d,8\p d, d d, a, d, f, a, | % 1
  d,8 d, d d, a, d, f, a, |
  bf,8 bf, bf bf, f bf, d f |
  a,8 a, a a, e cs |
  % -- A --
  d,8\mp d, d d, a, d, f, a, | % 5
  d,8 d, d d, a, d, f, a, |
  g,8 g, g g, d g, bf, d |
  a,8 a a, e a, e a |
  % -- B --
  <d, d>4\mf r <d, d>8 r r4 | % 9
  <f, f>4 r <f, f>8 r r4 |
  <g, g>4. <g, g>4 |
  <ef, ef>4. <ef, ef>4 |
  <bf,, bf,>4 r8 <bf,, bf,> <bf,, bf,>4 r | % 13
  <c, c>4 r8 <c, c> <c, c>4 r |
  <d, d>4 <d, d> <d, d>4. |
  <a,, a,>2.\< |
  % -- C --
  d,8\f d d, a, d, a, d | % 17
  d,8 d d, a, d, a, d |
  bf,8 bf bf, f bf, f bf |
  g,8 g g, d g, d g |
  <ef, bf, ef>2-> <ef, bf, ef> | % 21
  <a,, a,>2\< <a,, e, a,>\f |
  R8*10 | % 23-24
  % -- D --
  R1*7 | % 25-31
  R2. |
  % -- E --
  d,8\f a, d d, a, | % 33
  bf,8 bf bf, f bf, f bf |
  g,8 d g g, d |
  a,8 a a, e a, e a |
  <d, a, d>4->\ff r8 <d, a, d> <a,, a,>4-> r8 <a,, a,> | % 37
  <ef, bf, ef>4-> r8 <ef, bf, ef> <ef, bf, ef>4-> r |
  <a,, e, a,>4 <a,, e, a,> <a,, e, a,> <a,, a,>-> |
  <d,, a,, d, a, d f a>4->\fff r r2 | % 40
}
