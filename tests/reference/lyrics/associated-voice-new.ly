\version "2.24.0"
% The line goes over to a voice that begins at that moment, and back.
<<
  \relative \new Voice = "main" {
    c'4 << \new Voice = "other" { \voiceOne f8 g } { \voiceTwo f8.[ g16] \oneVoice } >> a8( b) c
    << \new Voice = "third" { \voiceOne \tuplet 3/2 { r8 f g } } { \voiceTwo f8.[ g16] } >> d4 e
  }
  \new Lyrics \lyricsto "main" {
    \set associatedVoice = "other" Ty -- ran -- \set associatedVoice = "main" no -- sau
    \set associatedVoice = "third" rus -- Rex \set associatedVoice = "main" and more words
  }
>>
