\version "2.24.0"
% Without a name only what no pianist plays is reported; the organist's feet take the lowest note.
<<
  \new PianoStaff <<
    \new Staff {
      <c'' e'' g'' c'''>1 |
      <c'' e'' g'' c'''>1 | % want: hand-span (taken for a piano): 7 notes at once
    }
    \new Staff {
      \clef bass
      <c, g, e>1 |
      <c, g, g>1 |
    }
  >>
  \new PianoStaff \with { instrumentName = "Organ" } <<
    \new Staff { <c'' e'' g'' c'''>1 | <c'' e'' g'' c'''>1 | }
    \new Staff {
      \clef bass
      <c, c g c'>1 |
      <c, e g>1 |
    }
  >>
>>
