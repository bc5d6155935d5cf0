\version "2.24.0"
  \include "nothing.ily"
{ c4 }
