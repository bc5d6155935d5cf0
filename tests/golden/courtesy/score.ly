\version "2.24.0"
\include "strings.ily"

\score {
  <<
    \new StaffGroup <<
      \new Staff = "vl1" \with { instrumentName = "Violin I" } { \time 4/4 \tempo 4 = 66 \vlI }
      \new Staff = "vl2" \with { instrumentName = "Violin II" } \vlII
      \new Staff = "vla" \with { instrumentName = "Viola" } { \clef alto \vla }
      \new Staff = "vc" \with { instrumentName = "Cello" } { \clef bass \vc }
    >>
    \new Staff = "tpt" \with { instrumentName = "Trumpet in C" } \tpt
  >>
}
