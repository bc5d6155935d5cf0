% A variable that is only a pitch has no note value of its own: it takes that of the place where it is used.
\version "2.24.0"
high = cis''
reminded = cis''!
checked = cis''=''
valued = d''2
{ c'4. \high 8 \high \high2 \high' \high, 4 e' }
\relative { c''4. \high 8 \high' g }
{ c'1 \reminded \checked \valued c'8 <\high e'> \high-. c'16 \tweak color #red \high \transpose c \high { c' } }
