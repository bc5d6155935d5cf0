% What \after puts behind the beginning of a note.
\version "2.24.0"
{ c'4 \after 4 \f d'2 \after 8 \p \after 4. \> e'2 f'4\! \after 8 \trill <g' b'>4 \after 8 ^"text" a'2 }
