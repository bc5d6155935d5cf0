% octave: --staff v --between "sib lab'"
\version "2.24.0"
\language "italiano"
\score { \new Staff = "v" \relative do'' { do4 re sib lab | mib2 r | lab,1 } }
