\version "2.24.0"
\parallelMusic va,vb,vc { c'4 d'8 e' | f'2 | \tuplet 3/2 { g'4 a' b' } |
  c''2 | d''4 e'' | f'' g'' | r2 | s2 | c'2 }
\parallelMusic #'(xa xb) \relative c' { c4 d | e f | g a | b c | d e }
global = { d4 e | f8 g4. | }
\parallelMusic A,B { \global | c'2 | \repeat unfold 2 { a4 } | \repeat volta 2 { b'4 b' | c' d' | } e'4 | f' }
\new StaffGroup << \new Staff \va \new Staff \vb \new Staff { \vc } >>
\new StaffGroup << \new Staff \xa \new Staff \relative c'' \xb >>
\new StaffGroup << \new Staff \A \new Staff \B >>
