% octave: --staff v --between "C4 C6" --fold --everywhere
\version "2.24.0"
figure = { g'8 b' c'' r }
\score {
  \new Staff = "v" { \figure \transpose c d \figure | \repeat unfold 2 { a''4 r a' r } | e''4 \figure }
}
