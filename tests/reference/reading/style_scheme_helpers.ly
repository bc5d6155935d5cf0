\version "2.24.0"
#(define (scale-by n) (ly:make-moment n))
#(define my-octave 1)
oct = #(define-music-function (m) (ly:music?) "Doubles in octaves." #{ << $m \transpose c c' $m >> #})
twice = #(define-music-function (n m) ((integer? 2) ly:music?) #{ \repeat unfold $n { #m } #})
riff = #(define-music-function (p) (ly:pitch?) #{ \transpose c $p { c'8 e' g' e' } #})
withDyn = #(define-music-function (d m) (ly:event? ly:music?) #{ <>$d #m #})
beat = #(define-scheme-function (d) (ly:duration?) d)
pad = #(define-music-function (d) (ly:duration?) #{ s$d r$d #})
echo = #(define-music-function (parser location music) (ly:music?) (make-sequential-music (list music (ly:music-deep-copy music))))
up = #(define-music-function (parser location mus) (ly:music?) #{ \stemUp $mus \stemNeutral #})
long = #(ly:make-duration 0)
pitchVar = #(ly:make-pitch 0 4 0)
theKey = \key d \major
{ \theKey \oct { d'4 fis' } \twice 3 { a'8 b' } \twice c''4 \riff f \riff d, \withDyn \f { c'4 } \pad 4. \pad 8 \echo { c'8 d' } \up { e'4 } $pitchVar 4 c'$(ly:make-duration 1)
  #@(list #{ c'4 #} #{ d'4 #}) s4 \relative { c'' e g \oct { c4 } } }
