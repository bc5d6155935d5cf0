% hands: --staff Harp
\version "2.24.0"

% Each hand shows the rests of one voice only.
upperRight = \relative { \voiceOne r4 c'' e g | f2 e4 d | c2. r4 | R1 | }

upperLeft = \relative { \voiceOne \clef bass s1 | s1 | s1 | s1 | }
lowerRight = \relative { \voiceTwo s1 | s1 | s1 | s1 | }

lowerLeft = \relative { \voiceTwo \clef bass c2 g | a4 r g r | r c, r2 | c1 | }

\score {
  \new PianoStaff = "harp" \with { instrumentName = "Harp " } <<
    \new Staff = "harpRight" << \new Voice \upperRight \new Voice \lowerRight >>
    \new Staff = "harpLeft" << \new Voice \upperLeft \new Voice \lowerLeft >>
  >>
  \layout { }
}
