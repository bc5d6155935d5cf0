% a part file: the note language and the time signature are the score's affair
fluteNotes = \relative c'' { c4\p cs8( d) ef4-. \tuplet 3/2 { f8 g a } | R1*3 | bf4->^"dolce" r r2\fermata | }
flute = { <>\mf \fluteNotes \grace { c''16 d'' } c''2.~ c''4 | << { e''2 f'' } \\ { c''1 } >> | }
horn = \transpose c g { c'2 <c' e'>4\accent q | \repeat unfold 2 { c'1 | } }
