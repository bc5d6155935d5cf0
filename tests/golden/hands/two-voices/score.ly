% hands: --staff Harp
\version "2.24.0"

% Each hand shows the rests of one voice only.
upper = \relative { \voiceOne r4 c'' e g | f2 e4 d | c2. r4 | R1 | }
lower = \relative { \voiceTwo c2 g | a4 r g r | r c, r2 | c1 | }

\score {
  \new Staff = "harp" \with { instrumentName = "Harp " } << \new Voice \upper \new Voice \lower >>
  \layout { }
}
