\version "2.24.0"
m = { c'1 } \void { d'1 } { \m \unfoldRepeats { \repeat volta 2 { e'4 } \alternative { {f'} {g'} } } \repeat segno 2 { a'4 } }
