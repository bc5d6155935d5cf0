\version "2.24.0"
{ \shiftDurations #-9 #0 { c'4 } d'4 }
