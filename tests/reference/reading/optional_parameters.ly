\version "2.24.0"
fA = #(define-music-function (pit mus) ((ly:pitch? #{ e' #}) ly:music?) #{ \transpose c' $pit $mus #})
gA = #(define-music-function (pit mus) ((ly:pitch? (ly:make-pitch 0 3)) ly:music?) #{ \transpose c' $pit $mus #})
hA = #(define-music-function (first mus) ((ly:music? #{ b'4( #}) ly:music?) #{ $first $mus #})
iA = #(define-music-function (num mus) ((number? 3) ly:music?) #{ \repeat unfold $num $mus #})
jA = #(define-music-function (dur mus) ((ly:duration? #{ 8 #}) ly:music?) #{ c'$dur $mus #})
kA = #(define-music-function (str mus) ((string? "violin") ly:music?) #{ \set Staff.instrumentName = $str $mus #})
lA = #(define-music-function (dur mus) ((ly:duration? (ly:make-duration 3 1)) ly:music?) #{ d'$dur $mus #})
mA = #(define-music-function (on mus) ((boolean?) ly:music?) #{ $mus #})
nA = #(define-music-function (one two) (ly:music? (ly:music? #{ { g'8 a' } #})) #{ $two $one #})
{ \fA { c'4 } \fA d' c'4 \gA { c'4 } \gA \default c'4 \hA \default a') \hA e' f' \iA { c'4 } \jA { e'4 }
  \kA f'4 \lA { g'4 } \iA 2 { d'4 } \fA \default d'4 \mA e'4 \jA 16 f' \lA 2 g' \nA c'4 \default \nA e' f' }
