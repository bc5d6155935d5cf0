% octave: --staff v --between "sib lab'"
\version "2.24.0"
\language "italiano"
\score { \new Staff = "v" \relative do'' { do,4 re sib lab' | mib2 r | lab1 } }
