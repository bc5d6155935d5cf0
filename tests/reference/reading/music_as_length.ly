\version "2.24.0"
skipped = { c'1 \repeat volta 2 { e'1 } }
\score { << { \skip \skipped a'1 } { \after 4. e'8 c'2 \after 2 \turn d'1 a'1 } >> }
\score { \unfoldRepeats << { \skip \skipped a'1 } { b'1 } >> }
