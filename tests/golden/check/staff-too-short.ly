\version "2.24.0"
<<
  \new Staff = "flute" \relative c'' { c1 c c c }
  \new Staff = "oboe" \relative c'' { c1 c c2. } % want: staff-length oboe is 1 bar and 1/4 of a whole note shorter than 2 other staves
  \new Staff = "clarinet" \relative c'' { c1 R1*3 }
  \new Staff = "marks" { s1*3 }
  \new Staff = "bassoon" \relative c { c1 c c c c } % want: staff-length bassoon is 1 bar longer than 2 other staves
>>
