\version "2.24.0"
clarinet = \relative c'' { \transposition a as4 bes c des | R1^\markup { muta in B\flat } | \transposition bes d2 g, | }
flute = { R1*3 }
second = { \transposition bes R1*2 | \transposition a R1 }
\score {
  <<
    \new Staff = "fl" \with { instrumentName = "Flute" } \flute
    \new Staff = "cl" \with { instrumentName = "Cl (A)" } \clarinet
    \new Staff = "fl2" \with { instrumentName = "Flute 2" } { r4 a'\p bes' c'' | d''2( c'') | d''4( e'') f''2 | }
    \new Staff = "held" \with { instrumentName = "Oboe" } { R1 | d''1~ | d''1 | }
    \new Staff = "cl2" \with { instrumentName = "Clarinet" } \second
  >>
}
