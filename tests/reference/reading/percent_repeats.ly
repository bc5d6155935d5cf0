\version "2.24.0"
{ \repeat percent 3 { c'4 d' } e'1 }
