\version "2.24.0"
\include "missing.ily" % want: include missing.ily
{ \unknownThing c'4 d' e' f' } % want: unresolved \unknownThing
