\version "2.24.0"
\include "silenced.ily"
\score { << \new Staff \with { instrumentName = "Flute" } \flute \new Staff \with { instrumentName = "Oboe" } \oboe >> }
