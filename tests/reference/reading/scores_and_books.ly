\version "2.24.0"
{ c' d'8 } \new Staff \relative { g' a } \score { << { c'1 } \\ { a1 } \\ { e''1 } >> } \book { \score { { d'1 } } } \score { { b'1 } }
