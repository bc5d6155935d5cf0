% 1m3  The Crossing -- Horn 2 in F

\version "2.24.0"
\include "../../common.ily"
\include "../global.ily"
\include "../brass.ily"

% entered at sounding pitch, printed for the player

\header {
  title = "1m3  The Crossing"
  instrument = "Horn 2 in F"
}

\language "nederlands"

\score {
  \new Staff = "horn2" {
    \transposition es
    \transpose es c' << \global \hornTwo >>
  }
  \layout { }
}
