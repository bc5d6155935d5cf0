\version "2.24.0"
% What a syllable can be made of.
\new Staff \new Voice = "a" { \repeat unfold 40 { c'8 } }
\addlyrics {
  Che_in ta~e~in "quo -- ted" l'al \markup { \italic so \bold on } don't -- what?! (in brackets)
  "1. 2" Ä -- ö~ü \tweak color #red red \markup \italic \concat { a b } a,b; c:d "_" ~ -- x __ y[z] |
  \override LyricText.font-shape = #'italic <i> \revert LyricText.font-shape end
  _ x_ _y "a_b" \once \override LyricText.color = #red -- z-w a-- b "it's" --
}
