\version "2.24.0"
% How long a player may go on without a rest is a matter of the instrument in hand.
bars = { c'4 c' c' c' \breathe }
\score {
  \new Staff \with { instrumentName = "Trombone 2" } {
    \clef bass \tempo 4 = 60
    \repeat unfold 13 \bars | R1 |
    R1*3^"muta in Bass Trombone" |
    \repeat unfold 13 { c4 c c c \breathe | } R1 | % want: endurance plays 52 s up to bar 30 without a rest of a second; 45 s of it are a lot
    R1*3^"muta in Trombone" |
    \repeat unfold 13 \bars | R1 |
  }
}
