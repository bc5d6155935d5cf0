% A silencer for a whole file.
\version "2.24.0"
% stavewright: allow range in this file (everything is played by a guest with a low A)
\score {
  \new Staff \with { instrumentName = "Flute" } { a4 c' d' e' | a4 c' d' e' | }
}
