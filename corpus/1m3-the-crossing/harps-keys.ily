% Lanterns over Hesk -- 1m3  The Crossing
% Harp 1 on one line as sketched; harp 2 and celesta set on two staves

\version "2.24.0"
\language "nederlands"

harpOne = \relative c' {
  \clef treble g,8\p bes d bes' d g bes g d bes g d | % 1
  es8 g bes g' bes es g es bes g es bes |
  g,8 bes d bes' d g bes g d bes g d |
  \clef bass <d, a' d fis a d>2.\arpeggio \clef treble <a'' d fis a d fis>2.\arpeggio |
  % -- A --
  g,8\mp bes d bes' d g bes g d bes g d | % 5
  es,8 g bes g' bes es g es bes g es bes |
  c8 es g es' g c c a f c a f |
  bes,8 d f d' f bes a fis d a fis d |
  << { r8 g' bes d g d bes g bes d bes g } \\ { <g,, d'>1. } >> | % 9
  << { r8 g'' c es g es c g c es c g } \\ { <c,, g'>1. } >> |
  <d a' c fis a d>2.\arpeggio |
  % -- B --
  \clef bass g,,16\mf bes d g bes d \clef treble g bes d g bes d g d bes g d bes g d bes g d bes |
  \clef bass bes16 d f bes d f \clef treble bes d f bes d f bes f d bes f d bes f d bes f d | % 13
  \clef bass es16 g bes es g bes \clef treble es g bes es g bes es bes g es bes g es bes g es bes g |
  \clef bass f16 a c f a c \clef treble f a c f a c f c a f c a f c a f c a |
  \clef bass d,16\< f a d f a \clef treble d f a d f a d a f d a f d a f d a f |
  \clef bass g,16 bes d g bes d \clef treble g bes d g bes d g es c g es c g es c g es c | % 17
  \clef bass <d a' d fis>4.\arpeggio\f \clef treble <a'' d fis a>\arpeggio <d fis a d>\arpeggio <fis a d fis>\arpeggio |
  <es, bes' es g bes es>4.\arpeggio g'8 bes es g4. |
  c,,,4.\<\glissando c'''4. r4. |
  % -- C --
  <g,,, d' g b d g b d g>2.\ff g'''8 d b g d b | % 21
  \clef bass e,,16 g b e g b \clef treble e g b e g b e b g e b g e b g e b g |
  \clef bass c,16 e g c e g \clef treble c e g c e g c g e c g e c g e c g e |
  \clef treble <d a' fis'' a fis'' a>2. <d'' fis a d>2.\arpeggio |
  \clef bass g,,,16 b d g b d \clef treble g b d g b d fis d b fis d b fis d b fis d b | % 25
  \clef bass c16 e g c e g \clef treble c e g c e g e' c a e c a e c a e c a |
  \clef bass e16 g b e g b \clef treble e g b e g b e cis a e cis a e cis a e cis a |
  <d a' d fis a c>2.\arpeggio\mf |
  % -- D --
  << { r8 g'\p b d g d b g b d b g } \\ { <g,, d'>1. } >> | % 29
  << { r8 g'' c es g es c g c es c g } \\ { <c,, g'>1. } >> |
  g8\pp b d b' d g b g d b g d |
  <es bes' es g bes>2.\arpeggio <d a' d fis a>2.\arpeggio |
  \clef bass g,8 d' g \clef treble b d g b d g b d g | % 33
  <g,,,, d' g b d g b>1.\arpeggio\ppp\fermata | % 34
}

harpTwoUpper = \relative c'' {
  R1.*4 | % 1-4
  % -- A --
  r4. <d, g bes>4.\p\arpeggio r4. <d g bes>4.\arpeggio | % 5
  r4. <es g bes>4.\arpeggio r4. <es g bes>4.\arpeggio |
  r4. <c es g>4.\arpeggio r4. <c f a>4.\arpeggio |
  r4. <d f bes>4.\arpeggio r4. <d fis a>4.\arpeggio |
  r4. <d g bes>4.\arpeggio r4. <d g bes>4.\arpeggio | % 9
  r4. <c es g>4.\arpeggio r4. <c es g>4.\arpeggio |
  R2. |
  % -- B --
  R1.*7 | % 12-18
  R8*18 | % 19-20
  % -- C --
  r4. <d g b>4.\f\arpeggio r4. <d g b>4.\arpeggio | % 21
  r4. <e g b>4.\arpeggio r4. <e g b>4.\arpeggio |
  r4. <c e g>4.\arpeggio r4. <c e g>4.\arpeggio |
  r4. <d fis a>4.\arpeggio r4. <d fis a>4.\arpeggio |
  r4. <d g b>4.\arpeggio r4. <d fis b>4.\arpeggio | % 25
  r4. <c e g>4.\arpeggio r4. <c e a>4.\arpeggio |
  r4. <e g b>4.\arpeggio r4. <cis e a>4.\arpeggio |
  R2. |
  % -- D --
  R1.*6 | % 29-34
}

harpTwoLower = \relative c {
  \clef bass
  R1.*4 | % 1-4
  % -- A --
  <g d'>2.\p <d' g>2. | % 5
  <es, bes'>2. <bes' es>2. |
  <c, g'>2. <f c'>2. |
  <bes f'>2. <d, a'>2. |
  <g d'>2. <d' g>2. | % 9
  <c, g'>2. <g' c>2. |
  R2. |
  % -- B --
  R1.*7 | % 12-18
  R8*18 | % 19-20
  % -- C --
  <g d'>2.\f <d' g>2. | % 21
  <e, b'>2. <b' e>2. |
  <c, g'>2. <g' c>2. |
  <d a'>2. <a' d>2. |
  <g d'>2. <b fis'>2. | % 25
  <c, g'>2. <a' e'>2. |
  <e b'>2. <a e'>2. |
  R2. |
  % -- D --
  R1.*6 | % 29-34
}

celestaUpper = \relative c'' {
  \transposition c''
  r4. d8\pp bes g d'4. r | % 1
  r4. es8 bes g es'4. r |
  r4. d8 bes g d'4. r |
  r2. fis,8 a d a4. |
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*7 | % 12-18
  R8*18 | % 19-20
  % -- C --
  <g b d>4.\f d''8 b g d4. g8 b d | % 21
  <g,, b e>4. b'8 g e b4. r |
  <g c e>4. c'8 g e c4. r |
  <a d fis>4. fis'8 a d a4. r |
  R1.*3 | % 25-27
  R2. |
  % -- D --
  r4. g8\p d b d4. r | % 29
  <g, es' c' g'>2. r |
  r4. b'8 g d b4. r |
  R1. |
  r4. d8\ppp g b d2. ~ | % 33
  d1.\fermata | % 34
}

celestaLower = \relative c' {
  \transposition c''
  <d g bes>4.\pp r r2. | % 1
  <es g bes>4. r r2. |
  <d g bes>4. r r2. |
  <d fis a>4. r r2. |
  % -- A --
  R1.*6 | % 5-10
  R2. |
  % -- B --
  R1.*7 | % 12-18
  R8*18 | % 19-20
  % -- C --
  <g, d' g>2.\f r | % 21
  <e b' e>2. r |
  <c' g'>2. r |
  <d a'>2. r |
  R1.*3 | % 25-27
  R2. |
  % -- D --
  <d g>4.\p r r2. | % 29
  <c, es' g>2. r |
  <d' g>4. r r2. |
  R1. |
  <g, d' g>1.\ppp ~ | % 33
  <g d' g>1.\fermata | % 34
}
