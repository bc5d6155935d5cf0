\version "2.24.0"
harmony = \relative c' { <c es g bes>2 <d as' f c'> q4 q\f }
{ \dropNote 2 \harmony \dropNote 2 \dropNote 4 \harmony \dropNote 9 \harmony }
{ \raiseNote 1 \harmony \raiseNote 3 \harmony }
{ \invertChords 2 \harmony \invertChords -1 \transpose c d \harmony }
\relative c' { \invertChords 1 { <c e g>4 <d f a c> } c' }
