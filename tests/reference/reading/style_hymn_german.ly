\version "2.18.2"
\language "deutsch"
global = { \key es \major \time 4/4 \partial 4 }
soprano = \relative es'' { \global es4 | es d c b | as2 g4 b | c b as g | f2. fis4 | g2 h4 c | d8 es f4 es d | es2.\fermata \bar "|." }
alto = \relative c'' { \global g4 | g f es8 d es f | f2 es4 es | es es es8 d es4 | d2. d4 | d2 g4 g | g8 g as4 g f8 as | g2. }
tenor = \relative c' { \global b4 | b b g g | c( b8 as) b4 g | as g c b | b2. a4 | g2 d'4 es | h8 c c4 c b! | b2. }
bass = \relative c { \global es4 | es b c g | as b es, es' | as, es' f g | b,2. d4 | g,2 g'4 f | d8 c f4 g b, | es2. }
verseOne = \lyricmode { \set stanza = "1." Nun | ruht das gan -- ze | Land und Meer, es | ru -- hen __ al -- le | Gär -- ten, }
verseTwo = \lyricmode { \set stanza = "2." Die | Ster -- ne ste -- hen | hoch und hell "am Him" -- mels -- zelt _ _ _ }
\score {
  \new ChoirStaff <<
    \new Staff = "women" <<
      \new Voice = "S" { \voiceOne \soprano }
      \new Voice = "A" { \voiceTwo \alto }
    >>
    \new Lyrics = "one" \lyricsto "S" { \verseOne }
    \new Lyrics = "two" \lyricsto "S" \verseTwo
    \new Staff = "men" << \clef bass
      \new Voice = "T" { \voiceOne \tenor }
      \new Voice = "B" { \voiceTwo \bass } >>
  >>
  \layout { \context { \Lyrics \override VerticalAxisGroup.staff-affinity = #CENTER } }
}
