\version "2.24.0"
durB = #(ly:make-duration 1 0 1/3)
durA = #(ly:make-duration 3 1)
{ c'4 c'\durA d' e'\durB f' <c' e'>\durA r\durA \skip\durA s\durA R\durA g' a'4*2/3 b'$durA d'\durA*2/3 e' }
\relative { c'\durA d e }
