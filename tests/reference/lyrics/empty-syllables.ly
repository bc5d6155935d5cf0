\version "2.24.0"
% _ and \skip take a note each; "" is a syllable too.
\new Staff \new Voice = "a" { c'4 d' e' f' | g' a' b' c'' | d'' e'' f'' g'' | a''( b'') c''' d''' }
\addlyrics { Ky -- ri -- _ _ e __ _ \skip 4 lei "" \repeat unfold 2 { \skip 2 } son \markup \null x y z }
