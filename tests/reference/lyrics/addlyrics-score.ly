\version "2.24.0"
\score {
  \new Staff { c'4 d' e' f' }
  \addlyrics { a b c d }
  \addlyrics { e f g h }
  \layout { }
}

\score {
  { c'4( d') e' f' }
  \addlyrics { a b c d }
}
