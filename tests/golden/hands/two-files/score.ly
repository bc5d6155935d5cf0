% hands: --staff harp1
\version "2.24.0"
\include "harps.ily"

\score {
  \new StaffGroup <<
    \new Staff = "harp1" \with {
      instrumentName = "Harp 1"
      shortInstrumentName = "Hp. 1"
    } << \global \harpOne >>
    \new Staff = "harp2" << \global \harpTwo >>
  >>
  \layout { }
}
