\version "2.24.0"
flute = \relative c''' { \time 4/4 R1*2 | g4( a b c | d1) | R1 | r2 a8 b c d | e1\> | R1\! }
oboe = \relative c'' { c2 d | e f | R1*2 | <<{ g4 f e d }{ s4\p s\< s s\! }>> | c1 | R1*2 }
\addQuote "Flute" { \flute }
\addQuote "Oboe" { \oboe }
clarinet = \relative c'' { \transposition bes R1 | \cueDuring "Oboe" #UP { R1 } | \cueDuringWithClef "Flute" #DOWN "bass" { R1*2 } |
  \quoteDuring "Oboe" { s1 } | d1 | <>^\markup \tiny "Fl." \cueDuring #"Flute" #UP { r2 r } | d1 }
horn = { \transposition f \relative c'' { g1~ | g2. r4 | \compressMMRests { R1*3 } | g,4 c e g | c1 | R1 } }
\score { << \new Staff = "fl" \with { instrumentName = "Flute" } \flute \new Staff = "ob" \oboe \new Staff = "cl" { \transpose bes c' \clarinet } \new Staff = "hn" \transpose c f \horn >> }
