\version "2.24.0"

% Ways of playing that are begun and not ended, or ended and not begun.

violinOne = {
  \tempo 4 = 5 % so slow that there is time for everything but the first pizzicato
  c''4^"arco" d'' e'' f'' % at the first note nothing is strange
  c''4^"pizz." d'' e'' f'' % want: prep-time arco to pizzicato, no time for it
  c''4( d'') e'' f'' % want: technique-open pizzicato since bar 2, but this note is bowed (a slur)
  c''4( d'') e'' f'' % told once
  c''4^"(arco)" d'' e'' f''
  c''4^"arco" d'' e'' f'' % want: technique-open "arco" takes back what was not said
  c''4^"senza sord." d'' e'' f'' % want: technique-open "senza sord." takes back what was not said
  c''4^"pizz. con sord." d'' e'' f'' % want: prep-time open to muted, no time for it
  c''4\upbow d'' e'' f'' % want: technique-open pizzicato since bar 8, but this note is bowed (a bow mark)
  c''4^"arco, senza sord." d'' e'' f''
  \repeat unfold 20 { c''4 d'' e'' f'' }
}

violinTwo = {
  \repeat unfold 10 { c''4 d'' e'' f'' }
  c''4^"con sord." d'' e'' f'' % want: technique-open "con sord." is never taken back, and 15 bars with notes follow % want: prep-time open to muted
  <c'' e''>4^"div." d'' e'' f'' % want: technique-open "div." is never taken back, and 13 bars of one line follow
  \repeat unfold 13 { c''4 d'' e'' f'' }
  R1*5
}

% Muted from the first note to the end: that is how the piece is.
viola = {
  R1*4 c'4^"con sordini" d' e' f'
  \repeat unfold 25 { c'4 d' e' f' }
}

% The words of one half leave the other half as it is; those of a variable count, too.
bow = ^\markup \italic "arco"
cello = {
  c4^"pizz." d e f
  c4^"half arco, half pizz." d e( f)
  c4\bow d( e f)
  c4^"sul pont." d e f
  c4^"ord." d e f
  \repeat unfold 25 { c4 d e f }
}

\score {
  <<
    \new Staff \with { instrumentName = "Violin I" } \violinOne
    \new Staff \with { instrumentName = "Violin II" } \violinTwo
    \new Staff \with { instrumentName = "Viola" } \viola
    \new Staff \with { instrumentName = "Cello" } { \clef bass \cello }
  >>
}

% Each ending follows the body of the repeat, not the ending before it.
\score {
  \new Staff \with { instrumentName = "Violin I" } {
    \repeat volta 2 { c''4( d'') r2 | c''4^"pizz." c'' c'' r | }
    \alternative { { c''4 r c''2^"arco" | } { c''4 c'' r2 | } }
    c''2^"arco" r |
    \repeat volta 2 { c''4^"pizz." c'' c'' r | }
    \alternative { { c''4 r c''2^"arco" | } {
      c''4( d'') r2 | % want: technique-open bar 8, beat 1, Violin I: pizzicato since bar 6, but this note is bowed (a slur)
    } }
    c''2^"arco" c'' |
    c''2 c''2^"arco" | % want: technique-open bar 10, beat 3, Violin I: "arco" takes back what was not said
  }
}
