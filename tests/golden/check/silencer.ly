% Comments that silence rules: on the line, above it, for bars; and those that are wrong or idle.
\version "2.24.0"

flute = {
  a4 c' d' e' |  % stavewright: allow range (the player has a low A)
  a4 c' d' e' |  % want: range A3
  % stavewright: allow range, bar-length (as in the composer's demo)
  a4 c' d' e' |
  % stavewright: allow range (other remarks may stand between)
  % and the line
  a4 c' d' e' |
  %{ stavewright: allow range (in a block comment) %}

  % and something between
  a4 c' d' e' | % bar 5
  c'4 c' d' e' |  %{ stavewright: allow range (nothing to allow here) %} % want: silencer silences nothing
  a4 c' d' e' | %{ stavewright: allow rnage (mistyped) %} % want: silencer did you mean "range"? % want: range A3
  c'1 | %{ stavewright: allow range %} % want: silencer the reason is missing
  c'1 | %{ stavewright: allow range () %} % want: silencer the reason is empty
  c'1 | %{ stavewright: allow range in bars x-y (why) %} % want: silencer "x-y" are no bars
  c'1 | %{ stavewright: allow range in bars 9-7 (why) %} % want: silencer "9-7" are no bars
  c'1 | %{ stavewright: allow range in that file (why) %} % want: silencer behind "in" stands
  c'1 | %{ stavewright: alow range (why) %} % want: silencer behind "stavewright:" stands "allow"
  c'1 | %{ stavewright: allow (why) %} % want: silencer the rule is missing
  c'1 | %{ stavewright: allow range for now (why) %} % want: silencer "for now (why)" is not understood
  c'1 | %{ stavewright: allow silencer (why) %} % want: silencer can't be silenced
  c'1 | % stavewright is a program; this is no silencer
}

% No score uses this music, so nobody can say whether the silencer is needed.
unused = { a4 b c' d' | } % stavewright: allow range (for another player)

\score {
  <<
    \new Staff \with { instrumentName = "Flute" } \flute
    \new Staff \with { instrumentName = "Oboe" } { R1*17 | }
  >>
}
