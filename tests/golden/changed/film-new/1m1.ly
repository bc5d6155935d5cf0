\version "2.24.0"
\include "oboe.ily"
\score { \new Staff \with { instrumentName = "Oboe" } \oboe }
