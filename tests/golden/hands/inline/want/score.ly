% hands: --staff "Harp"
\version "2.24.0"

\score {
  <<
    \new Staff { c'4 d' e' f' }
    \new PianoStaff = "hp" \with {
      instrumentName = "Harp"
    } <<
      \new Staff = "hpRight" {
        r2 g8 c' e' g'
      }
      \new Staff = "hpLeft" {
        \clef bass c,8 g, c e r2
      }
    >>
  >>
  \layout { }
}
