\version "2.24.0"
% Lists of tags with dots; a note that \scaleDurations changes; grace notes among grace notes take no time.
words = { \tag #'score { c'4 } \tag #'part { d'8 e' } \tag #'(xx yy) f'4 c'4 }
{ \keepWithTag score.part \words }
{ \removeWithTag score.part \words }
{ \tag score.zz a'4 \keepWithTag zz \tag zz.xx a'4 }
{ \scaleDurations 2/3 c'4 \scaleDurations 2/3 { d'4 } \scaleDurations 1/2 <c' e'>4 }
{ \grace { c''8 d''8 \acciaccatura { d''16 c''16 } e''8 } f''4 }
{ \grace { c''8 \grace { d''16 \grace a'8 c''16 } e''8 } f''4 \grace { \grace g'16 a'8 } b'4 }
