\version "2.24.0"
{ \repeat tremolo 4 { c'16 e'16 } \repeat tremolo 8 d'32 \repeat tremolo 2 { c'8 } }
