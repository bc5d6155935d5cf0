% Lanterns over Hesk -- 1m1  First Light over Hesk
% Harp 1 still as the composer left it: one line for both hands.  Harp 2 and celesta are set.

\version "2.24.0"

harpOne = \fixed c' {
  r4 |
  \clef bass des,,16\p f,, as,, des, \clef treble f, as, des f as des' as f des as, f, des, | % 1
  \clef bass des,,16 ges,, bes,, des, \clef treble ges, bes, des ges bes des' bes ges des bes, ges, des, |
  \clef bass des,,16 f,, as,, des, \clef treble f, as, des f as des' as f des as, f, des, |
  \clef bass <as,, es, as, des>2\arpeggio \clef treble <es as des' es'>2\arpeggio |
  % -- A --
  \clef bass des,,16\mp as,, f, des \clef treble as, f des' as des' as f as, des f, des, f,, | % 5
  \clef bass bes,,,16 f,, des, bes, \clef treble f, des bes f bes f des f, bes, des, bes,, des,, |
  \clef bass ges,,16 des, bes, ges \clef treble des bes ges' des' ges' des' bes des ges bes, ges, bes,, |
  \clef bass bes,,16 ges, \clef treble es bes es' bes es ges, \clef bass as,, es, \clef treble c as c' as c es, |
  << { r8 f8 c' as f' c' as' f' } \\ { f,,1 } >> | % 9
  << { r8 f8 des' bes f' des' bes' f' } \\ { bes,,1 } >> |
  << { r8 es8 bes ges es' bes ges' es' } \\ { es,,1 } >> |
  <as,, es, as, des es as des'>2\arpeggio <as,, es, as, c es as c'>2\arpeggio |
  % -- B --
  <des, as, f as des' f'>2\arpeggio\mf c'8 f' as' c'' | % 13
  <bes,, f, as, des f as bes des' f'>2 bes8 des' f' as' |
  <ges,, des, ges, bes, des ges bes>2\arpeggio <fis,, cis, a, cis fis a>2\arpeggio |
  b,,16\< fis, b, dis fis b dis' fis' b' fis' dis' b fis dis b, fis, |
  % -- C --
  \clef bass e,,16\f gis,, b,, e, \clef treble gis, b, e gis b e' b gis e b, gis, e, | % 17
  \clef bass a,,,16 cis,, e,, a,, \clef treble cis, e, a, cis e a e cis a, e, cis, a,, |
  \clef bass fis,,,16 a,,, cis,, fis,, \clef treble a,, cis, fis, a, cis fis cis a, fis, cis, a,, fis,, |
  \clef bass b,,,16 fis,, dis, b, \clef treble fis, dis b fis b fis dis fis, b, dis, b,, dis,, |
  \clef bass cis,,16 e,, gis,, cis, \clef treble e, gis, cis e gis cis' gis e cis gis, e, cis, | % 21
  \clef bass <a,,, a,, e, a, cis e>4\arpeggio \clef treble <cis e a cis' e' a'>4\arpeggio <a,,, e,, a, cis a' cis'' e''>2 |
  gis,,4\ff\glissando gis''4 r2 |
  \clef bass <as,, es, c ges>2\arpeggio\mf \clef treble <c es ges as c' es'>2\arpeggio |
  % -- D --
  << { r8 f\p as des' f' des' as f } \\ { des,1 } >> | % 25
  << { r8 ges bes des' ges' des' bes ges } \\ { <des, ges,>1 } >> |
  << { r8 as bes des' f' des' bes as } \\ { bes,,2 as,, } >> |
  <es,, bes,, ges, bes, des ges>2\arpeggio <as,, es, c es as c'>2\arpeggio |
  \tuplet 3/2 4 { \clef bass des,8\> as, des \clef treble f as des' f' as' des'' f'' as'' des'''\! } | % 29
  <des, as, f as es'>1\arpeggio\pp\fermata | % 30
}

harpTwoUpper = \fixed c' {
  r4 |
  R1*4 | % 1-4
  % -- A --
  r4 <des f as>2.\p | % 5
  r4 <des f as>2. |
  r4 <des ges bes>2. |
  <des es ges>2 <c es as>2 |
  r4 <c es f>2. | % 9
  r4 <des f bes>2. |
  r4 <des es ges>2. |
  <des es as>2 <c es as>2 |
  % -- B --
  R1*4 | % 13-16
  % -- C --
  <e gis b>4\f\arpeggio r <gis b e'>\arpeggio r | % 17
  <e a cis'>4\arpeggio r <a cis' e'>\arpeggio r |
  <fis a cis'>4\arpeggio r <a cis' fis'>\arpeggio r |
  <fis b dis'>4\arpeggio r <b dis' fis'>\arpeggio r |
  <e gis cis'>4\arpeggio r <gis cis' e'>\arpeggio r | % 21
  <e a cis'>4\arpeggio r <a cis' e'>\arpeggio r |
  R1*2 | % 23-24
  % -- D --
  R1*4 | % 25-28
  r4 <f as des'>2.\arpeggio\pp | % 29
  <as es'>1\fermata | % 30
}

harpTwoLower = \fixed c {
  \clef bass
  r4 |
  R1*4 | % 1-4
  % -- A --
  <des as>1\p | % 5
  bes,2. as,4 |
  ges,1 |
  es2 as, |
  f,2. as,4 | % 9
  bes,1 |
  <es bes>1 |
  <as, es>1 |
  % -- B --
  R1*4 | % 13-16
  % -- C --
  <e, b,>2\f r | % 17
  <a, e>2 r |
  <fis, cis>2 r |
  <b, fis>2 r |
  <cis, gis,>2 r | % 21
  <a, e>2 r |
  R1*2 | % 23-24
  % -- D --
  R1*4 | % 25-28
  <des as>1\pp ~ | % 29
  <des as>1\fermata | % 30
}

celestaUpper = \fixed c' {
  \transposition c''
  r4 |
  r4 <f c'>8\pp <as des'> <f c'>4 r | % 1
  r4 <ges des'>8 <bes f'> <ges des'>4 r |
  r4 <f c'>8 <as des'> <f c'>4 r |
  r2 <des' es'>4 r |
  % -- A --
  R1*8 | % 5-12
  % -- B --
  r4 f'16\mp as' des'' as' f'4 r | % 13
  r4 f'16 as' bes' as' f'4 r |
  R1*2 | % 15-16
  % -- C --
  R1*8 | % 17-24
  % -- D --
  <f as des'>4\pp r r2 | % 25
  <ges bes des'>4 r r2 |
  r4 <bes des'>8 <as f'> <bes des'>4 r |
  r2 <c' es'>4 r |
  r8 as des' f' as'4 es'' | % 29
  des''1\fermata | % 30
}

celestaLower = \fixed c' {
  \transposition c''
  r4 |
  <des as>2 r | % 1
  <des bes>2 r |
  <c, des as f' c''>2 r |
  <es as>2 r |
  % -- A --
  R1*8 | % 5-12
  % -- B --
  R1*4 | % 13-16
  % -- C --
  R1*8 | % 17-24
  % -- D --
  <des as>4 r r2 | % 25
  <ges des'>4 r r2 |
  r2 <f bes>4 r |
  r2 <es as>4 r |
  des2 as | % 29
  <des as>1\fermata | % 30
}
