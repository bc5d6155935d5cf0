\version "2.24.0"
violin = \relative c'' { b4 c d2\trill | e4( d) c2 | }
\score { \new Staff \with { instrumentName = "Violin II" } \violin }
