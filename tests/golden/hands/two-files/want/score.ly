% hands: --staff harp1
\version "2.24.0"
\include "harps.ily"

\score {
  \new StaffGroup <<
    \new PianoStaff = "harp1" \with {
      instrumentName = "Harp 1"
      shortInstrumentName = "Hp. 1"
    } <<
      \new Staff = "harp1Right" << \global \harpOneRight >>
      \new Staff = "harp1Left" << \global \harpOneLeft >>
    >>
    \new Staff = "harp2" << \global \harpTwo >>
  >>
  \layout { }
}
