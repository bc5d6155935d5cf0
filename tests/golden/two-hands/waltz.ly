\version "2.24.0"

% A bass that is to sound on under its chords, with a tune above, on one staff.
piano = {
  \time 3/4 \tempo 4 = 100
  << { e'''2 g'''4 | f'''2. | } \\ { s4 <g' c''>4 q | s4 <a' d''> q | } \\ { c2. | b,2. | } >>
}

\score {
  <<
    \new Staff = "p" \with { instrumentName = "Piano" } \piano
  >>
}
