\version "2.24.0"
% One run behind another: each goes with its own music.
\new Staff {
  { c'4 d' e' f' } \addlyrics { a b }
  { g'4 a' b' c'' } \addlyrics { c d e f g }
  \repeat volta 2 { e'2 f' } \addlyrics { h i j k }
}
