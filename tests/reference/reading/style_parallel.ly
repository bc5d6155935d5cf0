\version "2.24.0"
\parallelMusic voiceA,voiceB,voiceC {
  % Bar 1
  r8 g'16 c'' e'' g' c'' e'' r8 g'16 c'' e'' g' c'' e'' |
  r16 e'8.~ e'4 r16 e'8.~ e'4 |
  c'2 c'2 |
  % Bar 2
  r8 a'16 d'' f'' a' d'' f'' r8 a'16 d'' f'' a' d'' f'' |
  r16 d'8.~ d'4 r16 d'8.~ d'4 |
  c'2 c'2 |
}
\parallelMusic #'(global lhA lhB) {
  \key c \minor \time 2/4 s2 | c8 es g es | <c g>4 \tuplet 3/2 { c8 d es } |
  s2 | aes,8[ c] es4 | \grace { b,16 c } d2 |
}
\score { \new PianoStaff << \new Staff << \voiceA \\ \voiceB >> \new Staff { \clef bass \voiceC } >> }
\score { \new PianoStaff << \new Staff << \global \lhA >> \new Staff << \global \relative c' \lhB >> >> }
