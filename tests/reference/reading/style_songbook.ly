\version "2.20.0"
#(define-public (my-fn x) (* 2 x))
#(use-modules (ice-9 regex))
\paper { #(set-paper-size "a5") print-all-headers = ##t }
\layout { \context { \Score \remove "Bar_number_engraver" } \context { \Voice \override Glissando.thickness = #3 } }
melodyA = \relative c' { \clef treble \key f \major \time 3/4 c4 | f4. g8 a4 | << { c bes a } { s8\< s s4\! s\> <>\! } >> | g2 g8( a) | bes4.( a8) g4 | f2 \fermata }
wordsA = { \lyricmode { In stil -- ler Nacht, zur __ ers -- ten _ Wacht } }
songs = \score { << \new Voice = "x" { \partial 4 \melodyA } \new Lyrics \lyricsto x \wordsA >> \header { piece = "A" } }
\markup { \fill-line { "hello" \score { \new Staff { c'4 d' } \layout { } } } }
\bookpart { \songs }
\bookpart { \songs \score { { \partial 4 \transpose f g \melodyA } \addlyrics { \wordsA } \addlyrics { second verse is _ here at all \skip 1 yes } } }
\markuplist { \justified-lines { many words } }
{ c'4 d' }
\new Staff { e'4 }
<< { g'4 } { b'4 } >>
\relative { c' d }
