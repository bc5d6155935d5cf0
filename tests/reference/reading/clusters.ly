\version "2.24.0"
music = \relative { <e' d'>4 <g a> }
<< \new Staff { \makeClusters \music c'4 } \new Staff { \music \makeClusters { c'4 } d' } >>
