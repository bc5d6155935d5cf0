\version "2.24.0"
% Chords that one player of a bowed instrument can't strike.
\score {
  <<
    \new Staff \with { instrumentName = "Violin I" } {
      <g d' b' g''>1 | % four notes on four strings
      <g d' b' g'' d'''>1 | % want: chairs bar 2, beat 1, Violin I: 5 notes in one chord (and in 1 more place), and a player has 4 strings; write div., or leave out 1
      <g d' b' g'' d'''>1 |
      <g d' b' g'' d'''>1^"div." |
      <g d' b' g''>1^"unis." |
      << { <g' b' d''>1 } \\ { <g b d'> } >> | % two voices are divided
      <b fis''>1 | <g b\harmonic>1 | % the second one is only touched
      g1 |
    }
    \new Staff \with { instrumentName = "Viola" } {
      \clef alto
      <c g>1 |
      <d fis>1 | % want: chairs bar 2, beat 1, Viola: sounding D3 and F sharp 3 both lie on the lowest string; write div. or two voices, or move one of them
      R1*7 |
    }
    \new Staff \with { instrumentName = "Solo Cello" } {
      \clef bass
      <c g>1 |
      <c, e,>1 | % want: chairs bar 2, beat 1, Solo Cello: sounding C2 and E2 both lie on the lowest string; move one of them
      R1*7 |
    }
    \new Staff \with { instrumentName = "Vc. div. a 5" } {
      \clef bass
      <c g e' c'' e''>1 | R1*8 |
    }
    \new Staff \with { instrumentName = "Double bass" } {
      \clef bass
      <e, a,>1 | % an octave lower: on two strings
      <e, g,>1 | % want: chairs bar 2, beat 1, Double bass: sounding E1 and G1 both lie on the lowest string
      R1*7 |
    }
  >>
}
