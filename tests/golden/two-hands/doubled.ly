\version "2.24.0"
tune = { \time 3/4 << { e''2 g''4 | f''2. | } \\ { s4 <g' c''>4 q | s4 <a' d''> q | } \\ { c2. | b,2. | } >> }

\score {
  <<
    \new Staff = "p" \with { instrumentName = "Piano" } \tune
    \new Staff = "c" \with { instrumentName = "Celesta" } \tune
  >>
}
