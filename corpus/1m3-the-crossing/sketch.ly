% 1m3  The Crossing -- composer's sketch

\version "2.24.0"
\include "../common.ily"
\include "global.ily"
\language "nederlands"

melody = \relative c'' {
  R1.*4 | % 1-4
  % -- A --
  d,4\mp^"c.a."( g8 bes4 a8 g4. d4 f8 | % 5
  es4 g8 bes4 c8 bes4. g) |
  c4( es8 d4 c8 c4 a8 f4.) |
  d'4( bes8 f4 bes8 fis4 g8 a4.) |
  d4\mp^"vl. I, ob."( g8 bes4 a8 g4. d4 f8 | % 9
  es4 c8 g'4 f8 es4. c) |
  a4( c8 fis,4.) |
  % -- B --
  g4\mf^"vlns, fl."( bes8 d4 g8 f4. es4 d8 |
  f4. d4 bes8 f2.) | % 13
  g4( bes8 es4 g8 bes4. a4 g8 |
  a4. f4 c8 a2.) |
  d8\f( f a d4. c4 a8 f4.) |
  bes4( a8 g4. es4 f8 g4. | % 17
  fis2. a) |
  g4.( bes4 g8 es4.) |
  fis4.( a4 c8 d4.) |
  % -- C --
  b2.\ff^"tutti"( d4. b4 a8 | % 21
  g2. e4. g) |
  c4.( b4 a8 g4. e) |
  fis4( g8 a4. d,2.) |
  b'4.( a4 g8 fis4. d) | % 25
  e4( g8 c4. b4 a8 e4.) |
  g4.\>( b a4 g8 cis,4.) |
  d4\mf( e8 fis4.) |
  % -- D --
  g2.\p^"vl. I, hn."( d4. b4 d8 | % 29
  es2. c4. g) |
  d4\p^"c.a."( g8 b4 a8 g4. d) |
  es4( g8 bes4. a4 fis8 d4.) |
  g1.\pp ~ | % 33
  g1.\fermata | % 34
}

counter = \relative c' {
  R1.*4 | % 1-4
  % -- A --
  R1.*4 | % 5-8
  bes'2.\p^"va."( g4. bes | % 9
  g2. es) |
  fis4.( d) |
  % -- B --
  r4. d4\mf^"hn., vl. II"( es8 f4. g |
  f2. d) | % 13
  es4.( g bes c |
  c2. a) |
  f4.( a4 c8 d2.) |
  d4.( bes c es | % 17
  d2.\f c) |
  bes4.( g bes |
  a2. fis4.) |
  % -- C --
  g4.\ff^"hns, vc."( b d b | % 21
  b2. g) |
  e4.( g c b |
  a2. fis) |
  g4.( b d b | % 25
  c2. a) |
  b4.\>( g cis e |
  d4.\mf c) |
  % -- D --
  b2.\p( g | % 29
  g2. es) |
  d1. |
  g2.( fis) |
  d1.\pp ~ | % 33
  d1.\fermata | % 34
}

harmony = \relative c' {
  <bes d g>1.\p^"after-beats, pizz." | % 1
  <bes es g>1. |
  <bes d g>1. |
  <a d fis>1. |
  % -- A --
  <bes d g>1. | % 5
  <bes es g>1. |
  <c es g>2. <a c f>2. |
  <bes d f>2. <a d fis>2. |
  <bes d g>1. | % 9
  <c es g>1. |
  <a c d>2. |
  % -- B --
  <bes d g>1.\mf^"held" |
  <bes d f>1. | % 13
  <bes es g>1. |
  <a c f>1. |
  <a d f>1. |
  <bes d g>2. <c es g>2. | % 17
  <a d fis>1. |
  <bes es g>2. ~ <bes es g>4. |
  <a c d>2. ~ <a c d>4. |
  % -- C --
  <b d g>1.\ff^"brass, va. trem." | % 21
  <b e g>1. |
  <c e g>1. |
  <a d fis>1. |
  <b d g>2. <b d fis>2. | % 25
  <c e g>2. <a c e>2. |
  <b e g>2. <a cis e>2. |
  <a d fis>2. |
  % -- D --
  <b d g>1.\p | % 29
  <c es g>1. |
  <b d g>1. |
  <bes es g>2. <a d fis>2. |
  <b d g>1.\pp | % 33
  <b d g>1.\fermata | % 34
}

harpLine = \relative c' {
  \clef treble g,8\p bes d bes' d g bes g d bes g d | % 1
  es8 g bes g' bes es g es bes g es bes |
  g,8 bes d bes' d g bes g d bes g d |
  R1. |
  % -- A --
  g,8\mp bes d bes' d g bes g d bes g d | % 5
  es,8 g bes g' bes es g es bes g es bes |
  c8 es g es' g c c a f c a f |
  bes,8 d f d' f bes a fis d a fis d |
  << { r8 g' bes d g d bes g bes d bes g } \\ { <g,, d'>1. } >> | % 9
  << { r8 g'' c es g es c g c es c g } \\ { <c,, g'>1. } >> |
  R2. |
  % -- B --
  \clef bass g,16\mf bes d g bes d \clef treble g bes d g bes d g d bes g d bes g d bes g d bes |
  \clef bass bes16 d f bes d f \clef treble bes d f bes d f bes f d bes f d bes f d bes f d | % 13
  \clef bass es16 g bes es g bes \clef treble es g bes es g bes es bes g es bes g es bes g es bes g |
  \clef bass f16 a c f a c \clef treble f a c f a c f c a f c a f c a f c a |
  \clef bass d,16 f a d f a \clef treble d f a d f a d a f d a f d a f d a f |
  \clef bass g,16 bes d g bes d \clef treble g bes d g bes d g es c g es c g es c g es c | % 17
  R1. | % 18
  R8*18 | % 19-20
  % -- C --
  R1. | % 21
  \clef bass e16 g b e g b \clef treble e g b e g b e b g e b g e b g e b g |
  \clef bass c,16 e g c e g \clef treble c e g c e g c g e c g e c g e c g e |
  R1. | % 24
  \clef bass g,16 b d g b d \clef treble g b d g b d fis d b fis d b fis d b fis d b | % 25
  \clef bass c16 e g c e g \clef treble c e g c e g e' c a e c a e c a e c a |
  \clef bass e16 g b e g b \clef treble e g b e g b e cis a e cis a e cis a e cis a |
  R2. |
  % -- D --
  << { r8 g''\p b d g d b g b d b g } \\ { <g,, d'>1. } >> | % 29
  << { r8 g'' c es g es c g c es c g } \\ { <c,, g'>1. } >> |
  g8\pp b d b' d g b g d b g d |
  <es bes' es g bes>2.\arpeggio <d a' d fis a>2.\arpeggio |
  \clef bass g,8 d' g \clef treble b d g b d g b d g | % 33
  <g,,,, d' g b d g b>1.\arpeggio\ppp\fermata | % 34
}

bassLine = \relative c {
  \clef bass
  g2.\p d'2. | % 1
  es,2. bes'2. |
  g2. d'2. |
  d,2. a'2. |
  % -- A --
  g2. d'2. | % 5
  es,2. bes'2. |
  c,2. f2. |
  bes2. d,2. |
  g2. d'2. | % 9
  c,2. g'2. |
  d4. a'4. |
  % -- B --
  g2.\mf d'2. |
  bes2. f'2. | % 13
  es,2. bes'2. |
  f2. c'2. |
  d,2. a'2. |
  g2. c,2. | % 17
  d2. a'2. |
  es2. bes'4. |
  d,2. a'4. |
  % -- C --
  g2.\ff d'2. | % 21
  e,2. b'2. |
  c,2. g'2. |
  d2. a'2. |
  g2. b2. | % 25
  c,2. a'2. |
  e2. a2. |
  d,4. a'4. |
  % -- D --
  g2.\p d'2. | % 29
  c,2. g'2. |
  g2. d'2. |
  es,2. d2. |
  g1.\pp ~ | % 33
  g1.\fermata | % 34
}

#(set-global-staff-size 16)

\header {
  title = "1m3  The Crossing"
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
    \new Staff = "skbass" \with {
      instrumentName = "Bass"
      shortInstrumentName = "Bass"
    } << \global \bassLine >>
  >>
  \layout { }
  \midi { }
}
