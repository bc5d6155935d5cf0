\version "2.24.0"
\include "../notes.ily"
\score { \new Staff \with { instrumentName = "Violin" } \violin }
