\version "2.24.0"
\relative c' { <c e g>4 q8 d q16 <c\2 e>-. q\f }
