% hands: --staff Harp
\version "2.24.0"

% One hand is silent in a block that sets key and time: they stay, and so do the bars.
harp = {
  \transpose c d {
    \set Staff.instrumentName = "Harp"
    \key bes \major \time 3/4 \tempo 4 = 80
    R2.*2 |
    bes'4( c'' d'' | ees''2.)\f |
    \time 4/4 d''4 c''8 bes' c''2 |
  }
  \tuplet 3/2 { c,8 g, c } g,2. |
  R1 |
}

\score {
  \new Staff \harp
  \layout { }
}
