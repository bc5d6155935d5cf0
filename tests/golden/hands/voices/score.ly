% hands: --staff Harp
\version "2.24.0"

harp = \relative c' {
  << { r8 c e g c g e c } \\ { c,,1 } >> |
  << { e'4 f g a } \\ { c,2 d } >> |
  \clef bass c,,4 d e \clef treble c''' |
}

\score {
  \new Staff \with { instrumentName = "Harp" } \harp
  \layout { }
}
