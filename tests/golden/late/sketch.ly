\version "2.24.0"
% The composer's sketch: its own line, the film's bars.
\include "music.ily"
melody = \relative c' { c2 e | g c | b e, | d g ~ | g1 | }
\score { \new Staff << \global \melody >> }
