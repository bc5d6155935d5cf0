\version "2.22.1"
#(define-markup-command (boxed layout props text) (markup?) (interpret-markup layout props #{ \markup \box #text #}))
pizz = ^\markup { \italic pizz. }
arco = ^\markup \italic arco
div = \markup { div. }
% rests that a function writes
tacet = #(define-music-function (n) (index?) #{ R1*#n #})
silence = #(define-music-function (n) (number?) #{ #(make-multi-measure-rest (ly:make-duration 0 0 n) (*location*)) #})

vI = \relative c'' { c4\pizz d e f | \tacet 2 | g1\arco^\div | \set countPercentRepeats = ##t \repeat percent 3 { a8 b c d e f g a } | \silence 2 \mark \markup \boxed "A" <g, d' b' g'>1\sfz }
\score { \new Staff \vI }
