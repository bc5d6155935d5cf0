% 1m2  Across the Flats -- Xylophone

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../percussion.ily"

\header {
  title = "1m2  Across the Flats"
  instrument = "Xylophone"
}

\score {
  \new Staff = "xylo" << \global \xylophone >>
  \layout { }
}
