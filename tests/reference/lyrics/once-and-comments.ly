\version "2.24.0"
% Settings with the name of the context, comments, a line with a context of its own inside.
<<
  \new Staff << \new Voice = "a" { c'4 d'( e') f' | g'( a') b' c'' } >>
  \new Lyrics = "x" {
    \set Lyrics.ignoreMelismata = ##t % from the beginning
    \lyricsto "a" { one % two
      two three %{ not this %} \unset Lyrics.ignoreMelismata four five six }
  }
  \new Lyrics \with { associatedVoice = "a" } \lyricsto "b" { uno due }
>>
