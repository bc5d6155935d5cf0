\version "2.24.0"
% By hand.
\new Staff \new Voice = "a" {
  \time 3/4 f'4 g'8 \melisma f' e' f' \melismaEnd e'2. |
  c'4 \melisma d' e' | f' \melismaEnd g' a' |
  \set melismaBusy = ##t b' c'' \unset melismaBusy d''
}
\addlyrics { Ky -- ri -- e a b c d e f g }
