\version "2.24.0"
\score {
  <<
    \new Staff = "ob" \with { instrumentName = "Oboe" } { \grace { g'16( a' } b'4)\p( c'') \acciaccatura e''8 d''2 | \grace g'8 a'2( \grace { b'16 c'' } d''4) e'' | }
    \new Staff = "cl" \with { instrumentName = "Clarinet in Bb" } { \transposition bes c''2 \tuplet 3/2 { c''4 d'' e'' } | R1 | }
    \new Staff = "fl" \with { instrumentName = "Flute" } { R1*2 | }
  >>
}
