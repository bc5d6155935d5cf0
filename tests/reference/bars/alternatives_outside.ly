\version "2.24.0"
% A pick-up before the repeat; alternatives that begin with the bar and are too short, or begin inside of it.
{ \time 3/8 \partial 8 c'8 \repeat volta 2 { d'4. e'4. } \alternative { { f'4 } { g'4. } } a'4.
  \repeat volta 2 { b'4. } \alternative { { c''4. d''4. } { e''4. } } f''4.
  \repeat volta 3 { c'4 } \alternative { { d'8 } { e'8 } { f'4. } } g'4. }
