\version "2.24.0"
% Which music the lyrics belong to: the innermost context.
\score {
  <<
    \new Staff = "s" \new Voice { c'4( d') e' f' } \addlyrics { a b c d }
    \new Staff = "t" { g'4 a'( b') c'' } \addlyrics { e f g h }
    \new Staff = "u" \relative { g'4 a( b) c } \addlyrics { k l m n }
    \new Staff << { \relative { e'4( f) g2 } \addlyrics { o p q r } } { c'2 d'4 e' } >>
    \context Staff = "v" \with { instrumentName = "x" } { c'4 d' e' f' } \addlyrics { v w }
  >>
}
