% hands: --staff \harp --instrument Harp
\version "2.24.0"

% other.ly has a variable of this name, too, but nothing in common with this file.
harp = { c,8 g, e c' g' e'' c'' g' | }

\new Staff \harp
