\version "2.24.0"
pair = #(define-music-function (a b) (ly:music? ly:music?) #{ \partCombine $a $b #})
up = { c''4 d'' e'' f'' }
low = { c''4 d'' c'' r }
\score { \new Staff { \pair \up \low \pair \up \up \oneVoice c''1 } \layout {} }
\score { \new Staff << \partCombine \up \low \new Voice { c'1 } >> \layout {} }
\score { \new Staff { << { \partCombine \up \low } \new Voice = "one" { a'1 } >> } \layout {} }
\score { \new GrandStaff << \new Staff { \partCombine \up \low } \new Staff { \partCombine \low \up } >> \layout {} }
\score { \partCombine \relative { c''4 d e f } \relative { c''4 d c8 d4. } \layout {} }
\score { \new Staff { \partCombine \transpose c c' { c'4 d' } { c''4 b' } \partCombine { q4 <c'' e''>4 q 4 } { <c'' e''>4 q q c'' } } \layout {} }
