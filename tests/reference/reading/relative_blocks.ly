\version "2.24.0"
\relative c' { << { c e } { g c } \\ { f, } >> d \new Voice { e' } { f, { g'' } } c \fixed c'' { c d } e \relative c'' { b a } g \transpose c d { c d } a \octaveCheck c' b c='' d <e g c,> e <>\p f }
