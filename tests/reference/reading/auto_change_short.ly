\version "2.24.0"
\new PianoStaff \autoChange \relative c' { c4 b c d e, f }
