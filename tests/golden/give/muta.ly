\version "2.24.0"
clarinet = \relative c'' { \transposition a as4 bes c des | R1^\markup { muta in B\flat } | \transposition bes d2 g, | }
flute = { R1*3 }
\score {
  <<
    \new Staff = "fl" \with { instrumentName = "Flute" } \flute
    \new Staff = "cl" \with { instrumentName = "Cl (A)" } \clarinet
  >>
}
