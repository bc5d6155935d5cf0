% hands: --staff "Harp"
\version "2.24.0"

\score {
  <<
    \new Staff { c'4 d' e' f' }
    \new PianoStaff = "hp" \with {
      instrumentName = "Harp"
    } <<
      \new Staff = "hpRight" {
        R1
      }
      \new Staff = "hpLeft" {
        \clef bass c,8 g, c e g c' e' g'
      }
    >>
  >>
  \layout { }
}
