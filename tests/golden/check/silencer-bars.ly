% A silencer for bars of this file, and one that is out of date.
\version "2.24.0"
% stavewright: allow range in bars 2-3 (the guest has a low A)
%{ stavewright: allow hand-span in this file (there was a harp once) %} % want: silencer silences nothing
flute = {
  a4 c' d' e' | % want: range A3
  a4 c' d' e' |
  a4 c' d' e' |
  a4 c' d' e' | % want: range A3
}
\score { \new Staff \with { instrumentName = "Flute" } \flute }
