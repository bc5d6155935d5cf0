\version "2.24.0"
\include "../winds/flute.ily"
\include "../words.ily"
oboe = {
  c'4 d' e' f' | % 1
  g'1 | % 2
}
\score {
  <<
    \new Staff = "flute" \with { instrumentName = "Flute" } \flute
    \new Staff = "oboe" \with { instrumentName = "Oboe" } \oboe
  >>
}
