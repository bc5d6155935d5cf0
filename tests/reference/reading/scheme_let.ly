% Functions whose body names some constants or music first.
\version "2.24.0"
held = #(define-music-function (m) (ly:music?) (let ((mark #{ \tenuto #})) #{ #m #mark #}))
twice = #(define-music-function (m) (ly:music?) "twice" (let* ((n 2) (rest #{ r8 #})) #{ \repeat unfold #n { #m #rest } #}))
inner = #(define-music-function (m) (ly:music?) (let ((other m)) (make-sequential-music (list other))))
{ \held c'4 \twice { d'8 e' } \inner f' \inner { g'2 } }
