\version "2.24.0"
violin = \relative c'' { \grace { <b d>8 } <c e>2 <a c>4 \acciaccatura <b d f>8 <c e g>4 | }
\score { \new Staff \with { instrumentName = "Violin II" } \violin }
