\version "2.24.0"
#(define-public (ignored x) x)
#(set-default-paper-size "a4")
mBreak = { \break }
cresc = \markup { \italic "cresc." }
rall = \markup \italic "rall."
fp = #(make-dynamic-script "fp")
global = { \time 3/8 \key d \major \tag #'score \tempo "Vivace" 4. = 72 s4.*4 \tag #'part \mBreak s4.*4 \bar "|." }
vlnI = \relative { \tag score { d''8 e fis } \tag part { d8\p e fis } g16\fp fis e d cis b | \tag #'(score part) a'4. | \tag #'part { r8 r r } \tag #'score { R4. } |
  a,16-\cresc b cis d e fis | g8-\rall ( fis e) | d4.~ | d8 r4 }
vlnII = \relative { fis'8 g a | \pitchedTrill a4.\startTrillSpan b | R4.\stopTrillSpan | r8 <fis a>8 q | a16 a a a a a | \repeat tremolo 3 { a16 cis } | <fis, d'>4. | q8 r4 }
vla = \transpose c g, \relative c'' { \clef alto g8 a b | c16 b a g fis e | d4. | R4. | d16 e fis g a b | c8( b a) | g4.~ | g8 r4 }
vlc = { \clef bass d8 r r | a, r4 | d4. | \removeWithTag #'part { \tag #'part { d4 } \tag #'score { d4. } } | a,8 a, a, | a,4. | d4.~ | d8 r4 }
music = << \new Staff << \global \vlnI >> \new Staff << \global \vlnII >> \new Staff << \global \vla >> \new Staff << \global \vlc >> >>
\book { \bookpart { \score { \new StaffGroup \keepWithTag #'score \music } }
  \bookpart { \score { \new Staff << \keepWithTag #'part \global \keepWithTag #'part \vlnI >> } } }
