\version "2.24.0"
% Notes, rests and a slur; two verses, more syllables than notes, fewer syllables than notes.
\score {
  <<
    \new Staff \new Voice = "melody" { c'4 d' r e' | f'8( g') a'4 b' c'' | }
    \new Lyrics \lyricsto "melody" { One two three four -- teen syl -- la -- bles here }
    \new Lyrics = "second" \lyricsto "melody" { Not __ e -- nough }
  >>
}
