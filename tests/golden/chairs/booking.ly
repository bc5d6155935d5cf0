\version "2.24.0"
% Who is booked, and who is not.
\score {
  <<
    \new Staff \with { instrumentName = "Flutes 1.2" } { c''1 | }
    \new Staff \with { instrumentName = "Clarinet 3" } { c''1 | }
    \new Staff \with { instrumentName = "Bassoon" } { c1 | }
    \new Staff \with { instrumentName = "Bass Clarinet" } { c1 | }
    \new Staff \with { instrumentName = "Horn in D" } { c'1 | }
    \new Staff \with { instrumentName = "Strings" } { c'1 | }
    \new Staff \with { instrumentName = "Fog" } { c'1 | }
    \new Staff \with { instrumentName = "Tuba" } { R1 | }
    \new Staff \with { instrumentName = "Vl. xyz" } { c'1 | }
    \new Staff \with { instrumentName = "Playback" } { c1 | }
    \new Staff \with { instrumentName = "Soprano" } { c1 | }
  >>
}
