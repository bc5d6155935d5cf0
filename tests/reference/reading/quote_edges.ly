\version "2.24.0"
qa = { c'1 d'4 e' f' g' \grace { a'16 b' } c''2 d''4~ d'' e''1 <c'' e''>2 q4 4 \grace c'8 d'1 }
\addQuote "a" \qa
\score { <<
  \new Staff { s2 \quoteDuring "a" { s2 s4 } s2. \quoteDuring "a" { R1 } }
  \new Staff { s1 \quoteDuring "a" { s1 } s1 \quoteDuring "a" { s1*2 } }
  \new Staff { s1 s4 \quoteDuring "a" { c2 } s4 s1 s1 s1 \quoteDuring "a" { s1 } }
  \new Staff { s1*3 \quoteDuring "a" { s1 } s1*2 \quoteDuring "a" { \grace e8 s1 } }
  \new Staff { \quoteDuring "a" { s1*6 } }
  \new Staff { s8 \quoteDuring "a" { s4 s2. } }
>> \layout { } }
