\version "2.24.0"
\relative c' { c4 8 16 <e g>8. 16 d 4 }
