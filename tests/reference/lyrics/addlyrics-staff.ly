\version "2.24.0"
% The name of a staff: the lyrics follow all of its voices, and no slur keeps them from it.
\new Staff = "choir" { c'4( d') e' f' }
\addlyrics { a b c d }
