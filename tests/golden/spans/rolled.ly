\version "2.24.0"
% A rolled chord may span what it likes; nine notes are too many all the same.
harp = { <c e g c' e' g' c'' e'' g''>1\arpeggio | <a,, e, a cis' a'' cis''' e'''>1\arpeggio | <a,, e, a cis' a'' cis''' e'''>1 }
\score { \new Staff = "harp" \with { instrumentName = "Harp" } { \harp } }
