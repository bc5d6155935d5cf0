\version "2.24.0"
% \addlyrics behind repeats, and words with lengths of their own beside \lyricsto.
\score { { \repeat unfold 2 { c''4 d'' } e'' } \addlyrics { a b c d e } }
\score { \repeat unfold 2 { c''4 d'' } \addlyrics { a b c d } }
\score { { \repeat unfold 3 { c''4 d'' } \addlyrics { a b c d e } } }
\score { { c''4 \repeat unfold 2 { d''4 } \addlyrics { one two } e''4 } }
\score { << \new Voice = "x" { c''4 d'' e'' } \new Lyrics \lyricsto "x" { a4 b2 c8 } >> }
\score { << \new Voice = "x" { c''4 d'' e'' } \new Lyrics { \lyricsto "x" { a4 b } c2 d } >> }
\score { << \new Voice = "x" { c''4 d'' e'' f'' } \new Lyrics { \lyricsto "x" { a b } c1 } >> }
\score { \repeat volta 2 { c''4 d'' } \alternative { { e''2 } { f''2 } } \addlyrics { a b c d } }
