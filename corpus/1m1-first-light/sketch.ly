% 1m1  First Light over Hesk -- composer's sketch

\version "2.24.0"
\include "../common.ily"
\include "global.ily"

melody = \relative c'' {
  as8\p^"cl."( bes |
  c2.) bes8( as | % 1
  bes2.) ges8( as |
  bes4 as f4. es8 |
  es2.) as8\mp^"ob."( bes |
  % -- A --
  des2 c4 as | % 5
  f4. ges8 as2) |
  bes4.( c8 des4 es |
  f4. es8 c4) as8^"c.a., fl."( bes |
  c2\mp es4. des8 | % 9
  bes2.) f8( ges |
  as4 ges f es' |
  des2 c4) as8( bes |
  % -- B --
  des2\mf^"strings" c4 f | % 13
  as4. ges8 f2) |
  bes4.( as8 fis4 a |
  b4. a8 fis4 dis) |
  % -- C --
  gis2.\f( fis8 e | % 17
  cis2 e4 a) |
  gis4.( fis8 cis4 e |
  dis2.) b8( cis |
  e2 gis4 b | % 21
  cis2\ff) b4.( a8 |
  gis2. dis4 |
  es2.) as,8( bes |
  % -- D --
  des2\p^"hn." c4 as | % 25
  bes4. as8 ges2) |
  f4.( ges8 as4 bes |
  ges4\> es c) f8( es |
  es1 ~ | % 29
  es2\pp des)\fermata | % 30
}

counter = \relative c' {
  r4 |
  R1*4 | % 1-4
  % -- A --
  r4 f2\p( es4 | % 5
  des2 c4 bes |
  des2.) es8( f |
  ges2 es4 c |
  as'2.) f4( | % 9
  f4 es des c |
  bes2) c4( des |
  es2. c4) |
  % -- B --
  r4 f2\mf^"hns, vc."( es4 | % 13
  bes'4 as ges f |
  des2 cis4) a( |
  b2 dis) |
  % -- C --
  e4.\f( fis8 gis4 b | % 17
  a2) cis4( b |
  a2 gis4 fis |
  fis2 dis) |
  e4( fis gis cis | % 21
  e2) cis4( a |
  gis2 cis4 dis |
  es2 des4 c) |
  % -- D --
  as2.\p( f4 | % 25
  ges2 des) |
  des2( c4 bes |
  bes2 as) |
  as1 ~ | % 29
  as1\fermata | % 30
}

harmony = \relative c' {
  r4 |
  <as c des f>1\pp^"str. con sord." | % 1
  <bes des ges>1 |
  <as c des f>1 |
  <as des es>1 |
  % -- A --
  <as des f>1\p | % 5
  <as bes des f>1 |
  <bes des ges>1 |
  <bes des es ges>2 <as c es as>2 |
  <as c es f>1 | % 9
  <bes des f>1 |
  <bes des es ges>1 |
  <as des es>2 <as c es>2 |
  % -- B --
  <as des f>1\mf | % 13
  <as bes des f>1 |
  <bes des ges>2 <a cis fis>2 |
  <a b dis fis>1 |
  % -- C --
  <gis b e>1\f | % 17
  <a cis e>1 |
  <a cis e fis>1 |
  <b dis fis>1 |
  <gis cis e>1 | % 21
  <a cis e>1 |
  <gis cis dis>1 |
  <as c es ges>1 |
  % -- D --
  <as des f>1\pp | % 25
  <bes des ges>1 |
  <as bes des f>1 |
  <bes des es ges>2 <as c es as>2 |
  <as des f>1 | % 29
  <as des f>1\fermata | % 30
}

harp = \relative c' {
  r4 |
  \clef bass des,,16\p f as des \clef treble f as des f as des as f des as f des | % 1
  \clef bass des,16 ges bes des \clef treble ges bes des ges bes des bes ges des bes ges des |
  \clef bass des,16 f as des \clef treble f as des f as des as f des as f des |
  R1 |
  % -- A --
  \clef bass des,16\mp as' f' des' \clef treble as f' des' as des as f as, des f, des f, | % 5
  \clef bass bes,16 f' des' bes' \clef treble f des' bes' f bes f des f, bes des, bes des, |
  \clef bass ges16 des' bes' ges' \clef treble des bes' ges' des ges des bes des, ges bes, ges bes, |
  R1*5 | % 8-12
  % -- B --
  R1*4 | % 13-16
  % -- C --
  \clef bass e,16\f gis b e \clef treble gis b e gis b e b gis e b gis e | % 17
  \clef bass a,,16 cis e a \clef treble cis e a cis e a e cis a e cis a |
  \clef bass fis,16 a cis fis \clef treble a cis fis a cis fis cis a fis cis a fis |
  \clef bass b,16 fis' dis' b' \clef treble fis dis' b' fis b fis dis fis, b dis, b dis, |
  \clef bass cis16 e gis cis \clef treble e gis cis e gis cis gis e cis gis e cis | % 21
  \clef bass a,16 cis e a \clef treble cis e a cis e a e cis a e cis a |
  gis4\ff\glissando gis''''4 r2 |
  R1 | % 24
  % -- D --
  << { r8 f,,\p as des f des as f } \\ { des,1 } >> | % 25
  << { r8 ges' bes des ges des bes ges } \\ { <des, ges>1 } >> |
  << { r8 as'' bes des f des bes as } \\ { bes,,2 as } >> |
  R1 |
  \tuplet 3/2 4 { \clef bass des8\> as' des \clef treble f as des f as des f as des\! } | % 29
  <des,,,, as' f' as es'>1\arpeggio\pp\fermata | % 30
}

bassLine = \relative c {
  \clef bass
  r4 |
  des1\pp | % 1
  des1 |
  des1 |
  as1 |
  % -- A --
  des2\p des4 c | % 5
  bes2. as4 |
  ges1 |
  es'2 as, |
  f2. as4 | % 9
  bes1 |
  es2 ges4 es |
  as,2. bes8 c |
  % -- B --
  des2\mf f | % 13
  bes,2 as |
  ges2 fis |
  b2. a4 |
  % -- C --
  e'2\f dis4 e | % 17
  a,1 |
  fis2. gis8 a |
  b2 dis |
  cis2\ff gis | % 21
  a2. a4 |
  gis1 |
  as1\p |
  % -- D --
  des1 | % 25
  des1 |
  bes2 as |
  es'2 as, |
  des1 ~ | % 29
  des1\fermata | % 30
}

#(set-global-staff-size 16)

\header {
  title = "1m1  First Light over Hesk"
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
    } << \global \harp >>
    \new Staff = "skbass" \with {
      instrumentName = "Bass"
      shortInstrumentName = "Bass"
    } << \global \bassLine >>
  >>
  \layout { }
  \midi { }
}
