\version "2.24.0"
\score {
  <<
    \new Staff \with { instrumentName = "Violin" } { <c'' e''>1 }
    \new Staff \with { instrumentName = "Viola" } { <c' e' g' c''>1 }
  >>
}
