\version "2.24.0"
\new Staff \partCombine \relative c'' { c4 d e f | g1 | r1 | c,2 d } \relative c'' { a4 d c2 | g1 | c1 | r2 d }
