\version "2.24.0"
% Rests alone in brackets are not repeated; beside a note, or without brackets, they are.
{ \repeat tremolo 4 { c'16 r } d'4 }
{ \repeat tremolo 4 r16 e'4 }
{ \repeat tremolo 4 { s16 s } f'4 }
{ \repeat tremolo 4 { s16 c' } g'4 }
