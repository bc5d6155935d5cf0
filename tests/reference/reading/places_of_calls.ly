\version "2.24.0"
x = \override NoteHead.style = #'cross
\relative {
  \overrideTimeSignatureSettings 4/4 1/4 3,1 #'() \compoundMeter 1,2,3,1
  \footnote #'(-1 . 3) "text" a'4 \footnote "*" #'(1 . 1) "text" b4 \footnote #'(2 . 0.5) "text" Script c4
  <\footnote #'(1 . -1) "c" c e>4 \endSpanners c4\< \crossStaff d4 \parenthesize e4 \parenthesize r4 f4 : 32
  \grace c8 \x \grace d8 e2
}
