% hands: --staff "Harp"
\version "2.24.0"

\score {
  <<
    \new Staff { c'4 d' e' f' }
    \new Staff = "hp" \with {
      instrumentName = "Harp"
    } {
      \clef bass c,8 g, c e \clef treble g c' e' g'
    }
  >>
  \layout { }
}
