\version "2.24.0"
\include "missing.ily" % want: include missing.ily
{ \unknownThing c'4 d' e' f' } % want: unresolved \unknownThing
{ c'4^\unknownSign d' e' f' } % want: unresolved \unknownSign
half = #(string->duration "2") % a value that Scheme computes
{ c'\half d' e' } % want: unresolved \half
