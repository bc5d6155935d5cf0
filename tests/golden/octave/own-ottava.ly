\version "2.24.0"
ottava = #(define-music-function (number) (integer?) #{ \set Staff.ottavation = #"8" #})
\score { \new Staff = "fl" { c''''4 d'''' e'''' f'''' | } }
