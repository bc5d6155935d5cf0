\version "2.24.0"
% Voices that are over don't keep the others from a melisma.
\new Staff = "s" { c'4 << { d'4 e'( } \\ { d'2 } >> f'4( g') a' b'( | c''4) d'' e'' f'' }
\addlyrics { a b c d e f g h i j k }
