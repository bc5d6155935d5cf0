\version "2.24.0"
\include "harps.ily"

\score {
  \new Staff = "harp1" << \global \harpOne >>
  \layout { }
}

% the same music once more, in a quotation
\addQuote "harp" \harpOne
