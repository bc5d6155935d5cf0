\version "2.24.0"
oboe = \relative c'' { c4( d e f) | g4 a( b c | d1) | R1 | }
flute = { R1*3 | << { c''1 } \\ { a'1 } >> | }
\score {
  <<
    \new Staff = "fl" \with { instrumentName = "Flute" } \flute
    \new Staff = "ob" \with { instrumentName = "Oboe" } \oboe
  >>
}
