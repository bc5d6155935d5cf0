\version "2.24.0"
foo = \lyricmode { a2 b } bar = { c' d' } \score { \new Staff \bar } \score { \new Staff { c' } } \score { {d'1} \midi{} } \score { {e'1} \layout{} \midi{} }
