\version "2.24.0"
\header { title = "Tunes" }
tuneOne = { \time 6/8 \key g \major \repeat volta 2 { \partial 8 d'8 \relative { g'8 a b d4 b8 | a g e d4 \bar "" d8 } } \alternative { { e8 fis g a4 } { g4. g4 } } }
tuneTwo = \relative e' { \time 9/8 \key e \dorian \repeat volta 3 { e8 fis g b4. e8 d b | \alternative { \volta 1,2 { a4. g fis } \volta 3 { e4. e2. } } } \repeat segno 2 { e4. d cis | b2.~ 4. } \section fis'4.~ 4 4.~ 8 r4. }
\bookpart { \header { subtitle = "Jigs" } \score { \tuneOne \header { piece = "First" } } \markup { \bold "text between" } \score { \new Staff \tuneTwo \header { piece = "Slip jig" } \layout { } \midi { } } }
\bookpart { \score { \unfoldRepeats { \tuneOne } } \score { \transpose g a \tuneOne } }
\bookOutputSuffix "x"
\score { \new Staff = "s" \with { \omit TimeSignature } { \cadenzaOn c'4 d'8 e'\bar "|" g'2 \cadenzaOff \time 4/4 c'1 \numericTimeSignature \time #'(2 3) 5/8 c'4 d'4. \compoundMeter #'((3 8) (2 8)) c'4. d'4 } }
