\version "2.24.0"
% A short first bar; the first notes are rests.
\score {
  \new ChoirStaff <<
    \new Staff = "s" << \new Voice = "sop" { \partial 4 r4 | r2 c''4 d'' | e''1 } >>
    \new Lyrics = "s" \lyricsto "sop" { Hail to thee }
    \new Staff = "b" \new Voice = "bass" { \partial 4 c4 | d2. c4( | d1) }
    \new Lyrics = "b" \lyricsto "bass" { Hail to thee }
  >>
}
