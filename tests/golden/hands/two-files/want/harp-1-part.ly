\version "2.24.0"
\include "harps.ily"

\score {
  \new PianoStaff = "harp1" <<
    \new Staff = "harp1Right" << \global \harpOneRight >>
    \new Staff = "harp1Left" << \global \harpOneLeft >>
  >>
  \layout { }
}

% the same music once more, in a quotation
\addQuote "harp" << \harpOneRight \\ \harpOneLeft >>
