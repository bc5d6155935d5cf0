\version "2.24.0"
\new Staff { \harmonicByFret 7 g4\3 \harmonicByFret 12 { d4\4 a } \harmonicByFret 2.7 d2
  \harmonicByRatio #1/3 <g\3 b\2>4 \harmonicByRatio #1/4 g4 e }
