\version "2.24.0"
% \transpose writes a part for an instrument in some key; that of another key than the staff's name says is told.
tune = \relative c' { c4 d e f | g1 | }
\score {
  <<
    \new Staff \with { instrumentName = "Flute" } \tune
    \new Staff \with { instrumentName = "Clarinet in Bb" } \transpose bes c' \tune
    \new Staff \with { instrumentName = "Clarinet 2 in Bb" } \transpose a c' \tune % want: transposition Clarinet 2 in Bb: \transpose writes it for the clarinet in A, but the staff is named for the clarinet
    \new Staff \with { instrumentName = "Clarinet in A" } \transpose a c' \tune
    \new Staff \with { instrumentName = "Horn in F" } \transpose d c' \tune % want: transposition Horn in F: \transpose writes it for the horn in D
    \new Staff \with { instrumentName = "Trumpet in Bb" } \tune
  >>
}
% The whole piece is a minor third higher: for the clarinet, it is that and its own whole tone.
\score {
  <<
    \new Staff \with { instrumentName = "Flute" } \transpose c es \tune
    \new Staff \with { instrumentName = "Clarinet in Bb" } \transpose c f \tune
    \new Staff \with { instrumentName = "Clarinet 2 in Bb" } \transpose c es \tune
  >>
}
% With nobody to compare with, the piece may have been moved.
\score { \new Staff \with { instrumentName = "Clarinet in Bb" } \transpose c es \tune }
