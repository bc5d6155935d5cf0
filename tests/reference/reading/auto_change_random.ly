\version "2.24.0"
\score { \new PianoStaff << \new Staff = "up" { \autoChange  { c'4 b'4 | <d' d''>8 r4 a'8 | << e'8 { \skip 16 \time 4/4  } >> f'8 \tuplet 3/2 { g''8 d b' } | c''4 <f' g'>8 << { g'8 } \\ { d'8 } >> | e'8 \acciaccatura b16 c'8 << c4 { \skip 16 \clef bass } >> | \appoggiatura f16 f8\! s4 a'8 } } \new Staff = "down" { s1 } >> \layout {} }
\score { \new PianoStaff << \new Staff = "up" { \autoChange d' { e''4 a'4 | d4 << d''4 { \skip 16 \time 4/4  } >> | d'2 | c''4) a''4 } } \new Staff = "down" { s1 } >> \layout {} }
\score { \new PianoStaff << \new Staff = "up" { \autoChange  { b4 <d'' e''>4( | s8\f <f'' b>4 << { d'8 } \\ { g'8 } >> | e''8 r4 f''8[ | R2 | R2 } } \new Staff = "down" { s1 } >> \layout {} }
\score { \new PianoStaff << \new Staff = "up" { \autoChange  { b4^"x" r4 | \skip 8 d'4 << c8 { \skip 16 \omit Staff.Clef } >> | \new Voice { f''4 } b'4 | c4 r8 e'8 } } \new Staff = "down" { s1 } >> \layout {} }
\score { \new PianoStaff << \new Staff = "up" { \autoChange  { \partCombineUnisono b''4 <f' a'>8-. a'8 | f'4 g'4 | d4\pp \tuplet 3/2 { g'8 r d'' } } } \new Staff = "down" { s1 } >> \layout {} }
\score { \new PianoStaff << \new Staff = "up" { \autoChange  { \tuplet 3/2 { e8 r d' } b2 c8 a'8 | R2 | e''8 << { f8 } \\ { c'8 } >> << { e4 } \\ { d'4 } >> | \acciaccatura a'16 b''8^"x" a'4 e8 } } \new Staff = "down" { s1 } >> \layout {} }
\score { \new PianoStaff << \new Staff = "up" { \autoChange  { a'2 | \grace a16 g'2) f'8 s8 \afterGrace c'4 { c'16 } | c'4 << f8 { \skip 16 \time 4/4  } >> a'8) g'2 | f'8 a'8 b4 d2\f | r2 | f'4 r8 <d' g'>8 } } \new Staff = "down" { s1 } >> \layout {} }
\score { \new PianoStaff << \new Staff = "up" { \autoChange  { b'4\( <g'' d''>4 | R1 | R2 } } \new Staff = "down" { s1 } >> \layout {} }
\score { \new PianoStaff << \new Staff = "up" { \autoChange d' { R2 | e4 e''4 | g'4 a'8~ s8\< } } \new Staff = "down" { s1 } >> \layout {} }
\score { \new PianoStaff << \new Staff = "up" { \autoChange d' { R2 | R2 | d'2 | d'2 | f8 \tuplet 3/2 { g'8 r e' } r4 r4 \acciaccatura g16 f'8( | \appoggiatura b'16 a8 d4 d8\> | R2 | f'4 e'4-. <e' b''>4 g'8 r8 } } \new Staff = "down" { s1 } >> \layout {} }
