% An incipit is a score of its own in the place of the instrument's name: it comes after all scores of the book.
\version "2.24.0"
\score { \new Staff \with { instrumentName = "Tenor" } { \incipit { \clef "mensural-c1" c''1. } c''2 d'' } \layout { } }
\markup \score { { g'4 } \layout { } }
\score { { e''2 d'' } \layout { } }
