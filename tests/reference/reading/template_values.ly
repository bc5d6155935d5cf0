\version "2.24.0"
% Pitches and durations as arguments of a template, marks behind an argument, and a note with the place of the call.
pattern = #(define-music-function (low high) (ly:pitch? ly:pitch?) #{ <$low $high >4 $low 8 $high -. #})
held = #(define-music-function (d m) ((ly:duration? (ly:make-duration 2)) ly:music?) #{ c'$d $m r$d s$d <c' e'>$d $d 8 #})
marked = #(define-music-function (m) (ly:music?) #{ $m \sustainOn #})
{ \pattern c' e' \relative c' { \pattern c g' c4 } \transpose c d { \pattern c' e } }
{ c'4 \held 8 e' \held 8. d' \marked a' b' }
