\version "2.18.0"
\include "italiano.ly"
#(set-global-staff-size 18)
stringNumberSpanner = #(define-music-function (parser location StringNumber) (string?)
  #{ \override TextSpanner.font-size = #-5
     \override TextSpanner.bound-details.left.text = \markup { \circle \number #StringNumber } #})
barre = #(define-event-function (parser location fret) (markup?) #{ ^\markup { \bold "C" \concat { #fret } } #})
melodia = \relative do' { \voiceOne \key re \minor \time 6/8
  la'8-3 sib-4 la-2 sol fad sol | la4. re,4 r8 | \stringNumberSpanner "2" mi8\2 \startTextSpan fa sol\stopTextSpan la sib dod | re4.~ re4 re,8
  <re fa la>8\arpeggio q q q4. | la'8^\markup { \italic "rit." } \times 3/4 { sol16 fa mi re } reb8 dod4 | re2.\barre "VII" }
basso = \relative do { \voiceTwo re2. | re4. la'8 la, la | dod4. mi | fa4 mi8 re4. | re4. la' | sib4. la | re,2. }
\score {
  \new Staff = "chitarra" \with { midiInstrument = #"acoustic guitar (nylon)" instrumentName = "Chitarra" } {
    \clef "treble_8" \mergeDifferentlyDottedOn << \melodia \\ \basso >> \bar "|." }
  \layout { }
}
