\version "2.24.0"
\include "arabic.ly"
\score { \relative do' { \key sol \rast \time 10/8 sol8 lasb sib do re misb fa sol la r | \repeat volta 2 { fa4 misb8 re do4 sib8 lasb sol4 } \tuplet 3/2 4 { sol8 la sib do re mib } fa2 } }
