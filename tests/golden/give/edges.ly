\version "2.24.0"
oboe = \relative c'' {
  c4( d\< e f | g a b c)\f | % 1-2
  c4\> b a g | f\! e d c | % 3-4
  c2\< c2 | r2 c2\f | % 5-6
}
clarinet = \relative c' { \transposition bes R1*5 | e,2 g''''2 | }
cello = \relative c { g'4^"sul pont." g g\downbow g | g4^"con sord." g g\thumb g | R1*4 | }
horn = { \transposition f R1*6 }
\score {
  <<
    \new Staff = "ob" \with { instrumentName = "Oboe" } \oboe
    \new Staff = "cl" \with { instrumentName = "Clarinet in Bb" } \clarinet
    \new Staff = "hn" \with { instrumentName = "Horn in F" } \horn
    \new Staff = "vc" \with { instrumentName = "Cello" } { \clef bass \cello }
  >>
}
