\version "2.24.0"
% Notes written out, in passes that aren't, as tremolos and percents.
<<
  \new Voice = "a" {
    \repeat unfold 2 { c'4 d'( e') f' } \alternative { { g'1 } { a'2 b' } }
    \repeat volta 2 { c'2 \alternative { \volta 1 { d'2 } \volta 2 { e'2 } } }
    \repeat percent 3 { c'4 d'2 e'4 } \repeat tremolo 4 c'16 \repeat tremolo 4 { d'16 e' } f'4:16 g'2
  }
  \new Lyrics \lyricsto "a" { a b c d e f g h i j k l m n o p q r s t u v w x y z }
>>
