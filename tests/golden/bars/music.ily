% One bar a line.
motif = { c'4 d' e' f' }

flute = \relative c'' { \time 4/4 c4 d e f g1 \bar "||" a4 b c d | \tuplet 3/2 { c8 d e } f4 g2 | R1*2 r1 }

oboe = \relative c'' {
  c4 d e f
  % a remark above
  g1 % say it
  | a4 b c d
  | \clef treble e1 | f4
    g a b   % 77
  c1
  d1 |    %7
}

bassoon = {
  \motif \motif
  << { c'1 d' } \\ { e1 f } >>
  \repeat volta 2 { g1 }
  \alternative { { a1 } { b1 } }
}

harp = { \grace c'8 d'1 \mark \default
  e'2 <>^"x"
    f'2
  g'1-\tweak color #red -. \break a'1 { b'1 c''1 }
  d''1 \time 3/4 e''2. }

unused = { c'1 d'1 }
