\version "2.24.0"
\tagGroup full,part
\tagGroup #'(loud soft)
m = { \tag #'full c'4 \tag #'part d' \tag full,part e' \tag #'(loud midi) f' \tag midi g' a' \tag soft b' \tag #'loud \tag #'part c'' \tag part \tag midi d'' <\tag full e' \tag part g' c''>4 }
v = \tag #'midi { c4 d }
\new Staff \keepWithTag full \m
\new Staff \keepWithTag #'part \m
\new Staff \keepWithTag full,soft \m
\new Staff \keepWithTag #'(midi loud) \m
\new Staff \keepWithTag midi \m
\new Staff \keepWithTag other \m
\new Staff \keepWithTag #'() \m
\new Staff \removeWithTag full,midi \m
\new Staff \removeWithTag #'soft \keepWithTag full \m
\new Staff \keepWithTag #'loud { \tag loud \v \v \tag #'(soft) \v }
\new Staff \relative c' \keepWithTag #'part { c4 \tag full { g' } \tag part { g, c } e }
