\version "2.24.0"
\score { <<
  \new Staff \with { instrumentName = "Violins" } { \time 4/4
    <c'' e''>4 d'' <b' d''> c'' | % 1
    <a' c''>4 b' c'' d'' | % 2
    e''1 | % 3
    <c'' e''>4 d''4 <a' c'' e''>4 d''4 | % 4
    <c'' e''>4 d''4^"unis." <b' d''>4 c'' | % 5
    <b' d''>4 c''2. | % 6
    R1 | % 7
    <b' d''>4 r2. | % 8
    R1 | % 9
    r4 c''4 <b' d''>2 | % 10
    c''4 b' <a' c''>2 | % 11
    g'1 | % 12
  }
  \new Staff \with { instrumentName = "Oboes 1.2" } {
    <c'' e''>4 d'' <b' d''> c'' | % 1
    R1*11
  }
>> }
