\version "2.24.0"
% Beams by hand count only while there are none made automatically.
\new Staff \new Voice = "a" {
  c'8[ d'] e'[ f'] \autoBeamOff c'[ d'] e' f' | g'[ a' b' c''] \autoBeamOn c'[ d'] e' f' |
  \autoBeamOff c'[ d' \autoBeamOn e' f'] g' a' b' c'' |
  \set Staff.autoBeaming = ##f \unset autoBeaming c'[ d'] e' f' g'[ a'] b' c''
}
\addlyrics { a b c d e f g h i j k l m n o p q r s t u v w x y z aa bb cc dd ee ff gg hh ii jj kk ll mm }
