\version "2.24.0"
% One written note that sounds in four bars is reported once.
figure = { g4 a' b' c'' } % want: range bar 1, beat 1, Oboe: sounding G3 is a minor third below
\new Staff \with { instrumentName = "Oboe" } {
  \repeat unfold 4 \figure
}
