\version "2.24.0"
viola = \relative c' {
  << { \voiceOne e1 | f } \new Voice { \voiceTwo c1~ | c } >> \oneVoice |
  << { \voiceOne e2~ e4 f } \new Voice { \voiceTwo c2 d4 d } >> \oneVoice |
  << { \voiceOne <e g>2~ q4 f } \new Voice { \voiceTwo c2 c4 d } >> \oneVoice |
  << { \voiceOne <c e>2~ q4 f } \new Voice { \voiceTwo c2 c4 d } >> \oneVoice |
}
\score { \new Staff \with { instrumentName = "Viola" } { \clef alto \viola } }
