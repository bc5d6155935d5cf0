\version "2.24.0"
\include "../winds/flute.ily"
\include "../words.ily"
horn = {
  c'4 c' c' c' | % 1
  g'1 | % 2
}
\score {
  <<
    \new Staff = "flute" \with { instrumentName = "Flute" } \flute
    \new Staff = "horn" \with { instrumentName = "Horn" } \horn
  >>
}
