\version "2.24.0"
% Scheme that lists and copies music; and note values that Scheme gives.
m = { e'4 f' }
dur = #(ly:make-duration 2 1)
{
  c'4
  s4
  r4
  #(make-multi-measure-rest (ly:make-duration 0) (*location*))
  #(make-sequential-music (list m #{ g'4 #} (make-simultaneous-music (list m #{ { a'2 } #}))))
  #(make-sequential-music (make-list 2 m))
  #(make-sequential-music (append (list m) (list m m)))
  #(begin m) #(ly:music-deep-copy m) #@(list #{ c'4 #} #{ d'4 #}) b'4
  c'$dur d' $dur g' $dur $dur a'\dur b' r$dur s$dur <c' e'>$dur q$dur c'$(ly:make-duration 1) d'
}
echo = #(define-music-function (parser location music) (ly:music?) "Twice."
  (make-sequential-music (list music (ly:music-deep-copy music))))
both = #(define-music-function (a b) (ly:music? ly:music?) (make-simultaneous-music (list a b)))
intro = #(define-music-function (a) (ly:music?)
  (make-sequential-music (list #{ g'4-> #} a #{ \repeat unfold 2 { $a } #})))
num = #(define-music-function (n a) (integer? ly:music?) (make-sequential-music (make-list n a)))
padded = #(define-music-function (a) (ly:music?)
  (make-sequential-music (list a #{ s2 #})))
tacet = #(define-music-function (n) (index?) #{ #(make-multi-measure-rest (ly:make-duration 0 0 n) (*location*)) #})
#(define-markup-command (boxed layout props text) (markup?)
  (interpret-markup layout props #{ \markup \box #text #}))
\score { { \echo { c'8 d' } \both c'4 { e'8 f' } \intro c''8 \num 3 a'8 \padded b'4 \tacet 2 c''4 } }
\score { \relative { c'4 \echo { d8 e } f4 \intro { g8 a } \both c4 { e8 g } c4 } }
\score { \relative { \transpose c d { \echo { d'8 e } } } }
