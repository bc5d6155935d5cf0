motif = \relative c'' { c4 d e }
open = { c4 d e }
oboe = \relative c'' {
  g4 a b c | % 1
  <g b>2~ q |   % 2
  r4 \motif | \motif r |
  \open r | \open r |
}
horn = { c'2  e' | g'1 } % quiet
