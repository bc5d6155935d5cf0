\version "2.24.0"
% What q and a bare duration repeat has the pitch it had there: a \transpose around the repetition alone does not move it.
up = #(define-music-function (music) (ly:music?) #{ \transpose c g { $music } #})
{ c'4 \transpose c d { 4 e' } 8 <c' e'>4 \transpose c d { q <f' a'> } q }
\relative c' { c4 \up 8 <c e>4 \up q \up { q 4 } \fixed c'' { 4 d 4 } 4 \transpose c d { c4 4 } 4 q }
\new Staff \partCombine { c'4 \transpose c d { 4 4 } } { a4 \transpose c d { 4 4 } }
\addQuote "z" { c'4 \transpose c d { 4 d' } 4 }
{ \quoteDuring "z" { s1 } }
