\version "2.24.0"
\language "english"
ratio = #(ly:make-moment 7/8)
harm = #(define-music-function (n) (ly:music?) #{ \once \override NoteHead.style = #'harmonic #n #})
sul = #(define-event-function (text) (string?) #{ ^\markup \italic #text #})
music = { \time 5/8 cqs''8 dqf''4 etqs''8 ftqf'' | \tuplet 7/5 { c''16\sul "pont." d'' e'' f'' g'' a'' b'' } r8. r | \omit TupletBracket \tuplet 5/4 8 { c'16 d' e' f' g' c' d' e' f' g' } r8 |
 \time 4/4 \scaleDurations 2/3 { c'4 d' e' } r2 | \harm c'4 <c' \tweak style #'harmonic f'>4 <\tweak color #red c' e'>2 | c'4*3/4 d'16*4 r2 r16 | \cadenzaOn c'4 d'8 \cadenzaOff \bar "|" | \stopStaff s1 \startStaff | \xNote { c'4 d' } \xNotesOn e' f' \xNotesOff \bar "|." \featherDurations 2/1 { c'16[ d' e' f' g' a' b' c''] } \ottava 1 c''''4 \ottava 0 \makeClusters { <c' e'>4 <d' g'>4 } \grace c'8 c'4-\tweak font-size 3 -> }
\score { \new Staff \with { \consists "Horizontal_bracket_engraver" } \music }
\score { << \new Staff { \time 3/4 c'4 d' e' f' g' a' } \new Staff \with { \remove Timing_translator } { \set Staff.timeSignatureFraction = 9/8 \scaleDurations 2/3 { \repeat unfold 6 { c'8[ d' e'] } } } >> }
