\version "2.24.0"
sop = \relative c'' { \time 4/4 c4 d e8[( f]) g4 | \slurDotted a( g) f e | \tuplet 3/2 { d8( e f) } e4~ e r | <c e>2. \parenthesize d4 | c1 }
verse = \lyricmode { \set stanza = "1" "one two" three -- four __ five, \markup \bold six -- \once \override LyricText.color = #red sev'n eight ~ nine ten -- e -- lev -- en }
verseB = \lyrics { a4 b c d e1 }
\score { << \new Staff = "st" \new Voice = v \sop \new Lyrics = l \with { alignAboveContext = "st" } \lyricsto v { \verse } \context Lyrics = "l2" \lyricsto v { \repeat volta 2 { x -- y } \alternative { { a b } { c d } } } >> }
\score { \sop \addlyrics \verse \addlyrics { \set associatedVoice = "v2" u v w } }
\score { << \new Voice = "one" { \voiceOne c''2 d'' } \new Voice = "two" { \voiceTwo a'4 b' c'' d'' } \new Lyrics \lyricsto "two" { a \set associatedVoice = "one" b c d } >> }
\score { << \new Lyrics = "top" \new Staff \new NullVoice = "al" { c''4( d'') e''2 } \new Staff << \new Voice { c''4 d'' e''2 } >> \context Lyrics = "top" \lyricsto "al" { la la } >> }
