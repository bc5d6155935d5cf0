\version "2.24.0"
viola = \relative c' {
  e4 << { f g } \\ { c, d } >> a'4 | << { c4.( d8) e2 } \\ { a,4.( b8) c2 } >> e2 e | % 2
  << { c4. d8 e2 } \\ { a,2 c2 } >> << { c4-. c } \\ { a a } >> << { \voiceOne c4 c } \new Voice { \voiceTwo a % here
   a } >> \oneVoice
  << { c2 r } \\ { a2 s } >>  << { c4 d c2 } \new Voice { a4 b a2 } >> 
  << { \voiceOne c4 d } \new Voice { \voiceTwo a4 b } >> \oneVoice e8 f g4 |
}
\score { \new Staff \with { instrumentName = "Viola" } { \clef alto \viola } }
