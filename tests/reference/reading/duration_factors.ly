\version "2.24.0"
{ c'4*2/3 d' e'8 f' g'4*2*3/2 a' r s R1*2 c' \skip 1*2 d'}
