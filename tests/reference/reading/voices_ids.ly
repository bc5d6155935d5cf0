\version "2.24.0"
\new Staff { \voices 1,3 << { c''4 d'' } \\ { a'2 } >> \voices "up","down" << { c''4 } \\ { c'4 } \\ f' >> \voices 2,1,x << a \\ b \\ c' >> << c'4 \\ d' >> }
m = { << c'4 \\ d' >> }
\new Staff { \voices 4,3 { \m << e' \\ f' >> } \m }
