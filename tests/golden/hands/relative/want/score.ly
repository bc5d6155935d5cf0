% hands: --staff harp
\version "2.24.0"
\language "english"

harpMusicRight = \relative c' {
  r4 \tuplet 3/2 { c'8 g' ef' } c2 | % tuplets
  \grace { b16 c } d4 <c,, ef g>8 <c ef g>8 <c ef g> <c ef g> <c ef g>4 |
  \transpose c d { r2 g'8 c'' e'' g'' }
  \repeat volta 2 { R1 | }
  \alternative { { R1 | } { R1 | } }
}

harpMusicLeft = \relative c' {
  \tuplet 3/2 { \clef bass c,8 g' ef' } r4 r2 | % tuplets
  R1 |
  \transpose c d { c,8 g c' e' r2 }
  \repeat volta 2 { c,4 ef g c | }
  \alternative { { c,1 | } { <c ef g>1 | } }
}

\score {
  \new PianoStaff = "harp" <<
    \new Staff = "harpRight" \harpMusicRight
    \new Staff = "harpLeft" \harpMusicLeft
  >>
  \layout { }
}
