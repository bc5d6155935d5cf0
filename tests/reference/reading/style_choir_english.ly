\version "2.24.0"
\language "english"
Time = { \time 3/2 s1.*2 \time 4/4 s1*2 \time 3/2 s1. }
sop = \relative c'' { cs2 d e | fs2.( e4) d2 | <>\p cs4 b8( a) b4 cs | \tieDashed d1~ | \tuplet 3/2 { d2 cs b } cs2 \melisma b a \melismaEnd }
alt = \relative c' { \dynamicUp fss2 gs af | \autoBeamOff bff2. bf4 bs2 | r4 cx8[ ds] es4 es | fs1 | e2~ e4 e e2 }
text = \lyricmode { Sing to the \skip 2 morn -- _ ing "and the" day __ \repeat unfold 2 { a -- men } \markup { \italic Oh } the -- end }
textB = \lyricmode { \override Lyrics.LyricText.font-shape = #'italic la2 la la \unset associatedVoice la1 la2 }
\score { << \new ChoirStaff << \new Staff << \Time \new Voice = sop { \sop } >> \addlyrics \text \new Staff { \new Voice = "alt" << \Time \alt >> } \new Lyrics \lyricsto "alt" { \set ignoreMelismata = ##t \text } \new Lyrics \textB >> >> }
