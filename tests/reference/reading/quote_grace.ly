\version "2.24.0"
qa = { c'4 d' \grace { e'16 f' } g'4 a' | \grace b'8 c''1 }
\addQuote "a" \qa
\new Staff { s2 \quoteDuring "a" { s2 } }
\new Staff { s2 \quoteDuring "a" { \grace s8 s2 } }
\new Staff { s2 \quoteDuring "a" { \grace d8 s2 } }
\new Staff { s2 \quoteDuring "a" { \grace d16 s2 } }
\new Staff { s2 \cueDuring "a" #UP { \grace { d16 e} s2. } }
\new Staff { s2 \cueDuring "a" #UP { s2. } }
\new Staff { s2 \grace d8 \cueDuring "a" #UP { s2. } }
\new Staff { s2 \cueDuring "a" #UP { s2 \grace d8 } }
