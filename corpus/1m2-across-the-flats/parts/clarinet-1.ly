% 1m2  Across the Flats -- Clarinet 1 in B flat

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../woodwinds.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Clarinet 1 in B flat"
}

\score {
  \new Staff = "clarinet1" << \globalInBflat \clarinetOne >>
  \layout { }
}
