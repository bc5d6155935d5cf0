\version "2.24.0"
% What counts as a melisma can be set; a melisma by words with _.
\new Staff \new Voice = "a" {
  \set melismaBusyProperties = #'() c'4 d'( e') f' ~ | f' g' \unset melismaBusyProperties a'( b') |
  \set Voice.melismaBusyProperties = #'(tieMelismaBusy) c'( d') e' ~ e' |
  \set melismaBusyProperties = #'(melismaBusy slurMelismaBusy) c'( d') e' ~ e' | c'
}
\addlyrics { Ky -- ri -- _ e __ _ _ a b c d e f g h i j k }
