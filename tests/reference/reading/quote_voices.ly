\version "2.24.0"
qb = \relative c' { c4 << { d e } \\ { f g } >> a b( c) q }
\addQuote "b" \new Voice \qb
\addQuote "c" << \relative { c''4 d e f } \new Voice { c4 d e f } >>
\addQuote "d" << \new Voice { c''4 d'' e'' f''} { c1 } >>
\addQuote "e" << \new Voice { c''4 d'' e'' f''} \new Voice { c1 } >>
\addQuote "f" << \context Voice = "x" { c''4 } \context Voice = "y" { s4 d'' } \context Voice = "x" { s2 e''4 } >>
\addQuote "g" \relative c' { \repeat volta 2 { c4 d } \alternative { { e } { f } } \repeat unfold 2 { g } \repeat percent 2 { a8 b } \repeat tremolo 4 { c16 d } }
\addQuote "h" \drummode { bd4 sn \grace hh8 hh4 }
\score { << 
  \new Staff { \quoteDuring "b" { s1 s1 } }
  \new Staff { \quoteDuring "c" { s1 s1 } }
  \new Staff { \quoteDuring "d" { s1 s1 } }
  \new Staff { \quoteDuring "e" { s1 s1 } }
  \new Staff { \quoteDuring "f" { s1 s1 } }
  \new Staff { \quoteDuring "g" { s1 s1 s1 } }
  \new DrumStaff { \quoteDuring "h" { s1 } }
>> \layout { } }
