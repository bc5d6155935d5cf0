% hands: --staff harp
\version "2.24.0"
\language "english"

harpMusic = \relative c' {
  \tuplet 3/2 { c,8 g' ef' } \tuplet 3/2 { c' g' ef' } c2 | % tuplets
  \grace { b16 c } d4 <c,, ef g>8 8 q q q4 |
  \transpose c d { c,8 g c' e' g' c'' e'' g'' }
  \repeat volta 2 { c,4 ef g c | }
  \alternative { { c,1 | } { <c ef g>1 | } }
}

\score {
  \new Staff = "harp" \harpMusic
  \layout { }
}
