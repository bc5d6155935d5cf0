\version "2.24.0"
% Two harps are two players, and strings in a GrandStaff have no hands to share.
<<
  \new PianoStaff \with { instrumentName = "Harp 1" } <<
    \new Staff { <c'' e'' g'' c'''>1 }
    \new Staff { \clef bass <c e g c'>1 }
  >>
  \new PianoStaff \with { instrumentName = "Harp 2" } <<
    \new Staff { <d'' f'' a'' d'''>1 }
    \new Staff { \clef bass <d f a d'>1 }
  >>
  \new GrandStaff <<
    \new Staff \with { instrumentName = "Violin I" } { <g d' b' g''>1 }
    \new Staff \with { instrumentName = "Violin II" } { <g d' b' e'''>1 }
  >>
>>
