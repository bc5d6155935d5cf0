\version "2.24.0"
% \\ makes voices "1" and "2".
\score {
  <<
    \new Staff { c'2 << { d''4 e'' f''2 } \\ { d'2 e'4 f' } >> g'2 << { a''4 b'' } \\ { a'2 } >> }
    \new Lyrics = "one" \lyricsto "1" { a b c d e }
    \new Lyrics = "two" \lyricsto "2" { x y z u v w }
  >>
}
