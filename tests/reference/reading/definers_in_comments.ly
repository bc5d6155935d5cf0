\version "2.24.0"
fA = #(define-music-function (x) (ly:music?)
 ; define-void-function
 #{ $x $x #})
gA = #(;; a define-void-function, not
 define-music-function (x) (ly:music?) #{ $x $x #})
hA =
#(define-music-function ; (x y)
 (x) ; x
 (ly:music?) "doc" #{ $x $x #})
iA = #(define-music-function (x) (ly:music?) "like define-event-function" #{ $x $x #})
jA = #"define-music-function (x) (ly:music?)"
{ \fA c'4 \gA d'4 \hA e' \iA f' }
