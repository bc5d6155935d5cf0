\version "2.24.0"
% Notes in voices of their own inside of the music are not heard.
\new Staff {
  c'4 d' << { e'4 f' } \\ { c'2 } >> g'4 a' << { b'4 c'' } { g'2 } >>
}
\addlyrics { a b c d e f g h }
