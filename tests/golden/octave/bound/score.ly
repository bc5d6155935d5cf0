% octave: --staff v --between "c' c'''" --fold
\version "2.24.0"
\score {
  \new Staff = "v" \fixed c' {
    g4 a b c' | d'2 r4 b,4 ~ | b,2 r4 \acciaccatura { a,8 b, } c4 | d'4 e' d' c' |
    g'2 r2 | <b, g>4\staccato r2. | \repeat tremolo 4 { b,16 d } r2 | e'1 |
  }
}
