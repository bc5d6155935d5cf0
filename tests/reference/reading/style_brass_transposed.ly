\version "2.24.0"
trumpetNotes = \relative { \transposition bes c''4 \tuplet 3/2 { c8 c c } c4 e | g2 e4 c | \voices 1,2 << { e2 f } \\ { c2 d } >> | \magnifyMusic 0.63 { c8 d e f } g4-! r | \bar "||" }
hornNotes = \relative c' { \transposition f \clef treble <g' c>2 <c e> | q4 q q2 | \clef bass \transposition c c,2 g | c1 }
tromboneNotes = { \clef tenor c'2 e' | c'4\glissando d' e' f' | g1 | \clef bass c,4\rfz d, e, f, }
concert = \keepWithTag #'(concert full) << \new Staff \transpose c bes, \trumpetNotes \new Staff \transpose c f \hornNotes \new Staff \tromboneNotes >>
written = << \new Staff \trumpetNotes \new Staff \hornNotes \new Staff \transpose bes c' { \tromboneNotes } >>
\book { \bookOutputName "conc" \score { \concert } }
\book { \bookOutputName "parts" \score { \written } \score { \transpose c' d { \transpose d c' \fixed c'' { c4 d e f } \relative { c''4 d } } } }
