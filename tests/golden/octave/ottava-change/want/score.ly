% octave: --staff right --ottava add
\version "2.24.0"
% a note that comes from the other staff ends its bracket where the next one would begin
right = { r4 \ottava 1 c''''4 \ottava 0 c''''4 r4 | r2 c''''2 }
left = { f'4 f'' \change Staff = "right" f'''' \change Staff = "left" f' | f' \change Staff = "right" \ottava 1 f'''' \ottava 0  \change Staff = "left" f'2 }
\score {
  \new PianoStaff <<
    \new Staff = "right" \right
    \new Staff = "left" \left
  >>
}
