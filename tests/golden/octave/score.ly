\version "2.24.0"
\include "music.ily"
\score {
  <<
    \new Staff = "oboe" \with { instrumentName = "Oboe" } \oboe
    \new Staff = "horn" \with { instrumentName = "Horn" } { \transpose c g \horn }
  >>
}
\score { \new Staff = "coda" \oboe }
