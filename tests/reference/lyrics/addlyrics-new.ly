\version "2.24.0"
% \new without a name gets one.
<<
  \new Staff { c'4( d') e'2 } \addlyrics { a b c d }
  \new Voice { g'4( f') e'2 } \addlyrics { k l m n }
  { g4( f) e2 } \addlyrics { x y z }
>>
