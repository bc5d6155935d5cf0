\version "2.24.0"
% The variable with the metre has right bar checks in the same staff; the horn's are off to the end.
metre = { \time 3/4 s2.*4 | }
horn = \relative c' {
  f2. |
  f4 g a b | % want: bar-length 1/4 behind the bar line; bar 2, from line 6, holds 1 of 3/4
  f2. |
  f2 |
}
\new Staff \with { instrumentName = "Horn in F" } << \metre \horn >>
