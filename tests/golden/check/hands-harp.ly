\version "2.24.0"
% Eight strings in two groups can be plucked at once; nine cannot, and three groups two octaves apart neither.
\new Staff \with { instrumentName = "Harp" } {
  <c e g c' e' g' c'' e''>2 <d f a d' f'' a'' d''' f'''> |
  <c e g c' e' g' c'' e'' g''>1 | % want: hand-span 9 notes at once, C3 to G5: two hands have 8 fingers; leave out 1, roll it
  <a,, e, a cis' a'' cis''' e'''>1 | % want: hand-span 7 notes at once
  <a,, e, a cis' a'' cis''' e'''>1\arpeggio |
  <c e g c' e' g' c'' e'' g''>1\arpeggio | % want: hand-span 9 notes rolled, C3 to G5: two hands have 8 fingers; leave out 1 or share
}
