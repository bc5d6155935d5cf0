% Marks that Scheme makes under a name.
\version "2.24.0"
begin = #(make-span-event 'TextSpanEvent START)
end = #(make-span-event 'TextSpanEvent STOP)
press = #(make-articulation 'tenuto)
{ c'8\begin d'\press e'\end f'-\press g'_\press a'\begin-\press b'\end c''\press }
