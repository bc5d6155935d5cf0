\version "2.24.0"
\header { title = "A dance" }
\include "notes.ily"
\score {
  <<
    \new Staff \with { instrumentName = "Violin" } \violin
    \new Staff \with { instrumentName = "Viola" } \viola
  >>
}
