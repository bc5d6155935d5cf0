\version "2.24.0"
{ \transpose c ees { c' cis' b eis' } \transpose bes c' { ges' ces' fes' } \transpose c' bis' {dis' bis} \transpose f c { \relative c' { c d e } } }
