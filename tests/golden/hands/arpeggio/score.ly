% hands: --staff harp
\version "2.24.0"

global = { \time 4/4 \key c \major }

harp = \relative c {
  c,16\p g' c e g c e g c g e c g e c g | % 1
  r2 c''4 r |
  R1 | % 3
}

\score {
  \new Staff = "harp" \with { instrumentName = "Harp" } << \global \harp >>
  \layout { }
}
