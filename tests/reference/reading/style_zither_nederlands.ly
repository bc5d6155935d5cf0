\version "2.24.0"
\relative c' { c d e f g a b c | cis des dis es eis fis ges gis as aes ais bes bis ces | ceses cisis ases aeses eses | c!4 cis? c,, c'''' <c e g>8 <d, f a> <e' g b> c | <c' e>4 ~ <c e> | r4 R1 s4 \skip 4 \skip 1*2 c16 16 32. 32. 8. 4.. c1*3/8 c\breve c\longa c\maxima c4*0 c2*5 }
