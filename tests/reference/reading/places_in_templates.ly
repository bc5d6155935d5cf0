fa = #(define-music-function (n) (number?) #{ \override NoteHead.font-size = #n c'2 d'2 #})
fb = #(define-music-function () () #{ c'2 d'2 #})
fc = #(define-music-function (m) (ly:music?) #{ c'4 $m d'4 #})
fd = #(define-music-function (m) (ly:music?) #{ \stemUp #m #})
fe = #(define-music-function (m) (ly:music?) #{ #m #})
ff = #(define-music-function (m) (ly:music?) #{ \tweak color #red #m #})
fg = #(define-music-function (m) (ly:music?) m)
fh = #(define-music-function (n m) (number? ly:music?) #{ c'4 #})
fi = #(define-music-function (m) (ly:music?) #{ { c'2 #m } #})
fj = #(define-music-function (m) (ly:music?) #{ \tweak color #red #m c'4 #})
fk = #(define-music-function (m) (ly:music?) #{ \once \override NoteHead.color = #red $m c'4 #})
{ \fa 3
  \fb
  \fc e'2
  \fd f'2
  \fe g'2
  \ff a'2
  \fg b'2
  \fh 2 c'
  \fi d'2
  \fj e'4
  \fk f'4 }
\version "2.24.0"
$#{ c'4 e' #}
