% octave: --staff horn --into horn --fold
\version "2.24.0"
% sounds a fifth lower: the written low notes and the written top lie outside
horn = \relative c'' {
  \transposition f
  g4 c e r | g e c r | g'2 r4 e' | g2 r2 | c,,2 r | f,,,2 r |
}
\score { \new Staff = "horn" \with { instrumentName = "Horn in F" } \horn }
