\version "2.24.0"
% The eighth before the end of a repeat stays one: a quarter would be tied into what follows it.
viola = \relative c' {
  \time 2/4 \partial 8
  \repeat volta 2 { r8 | c8^"pizz." r d r | e4 r8 f }
  \repeat volta 2 { r8 | g8 r a4 | b2 }
}
\score { \new Staff \with { instrumentName = "Viola" } { \clef alto \viola } }
