% helpers
\language "italiano"
fz = #(make-dynamic-script "fz")
cresc = \<
dolce = \markup { \italic dolce }
solo = #(define-music-function (parser location music) (ly:music?) #{ \once \override TextScript #'padding = #2 $music #})
tempoMarks = { \tempo "Andantino" 4=72 }
sempre = _\markup { \italic sempre }
trem = #(define-music-function (parser location n notes) (integer? ly:music?)
   #{ \repeat tremolo $n $notes #})
