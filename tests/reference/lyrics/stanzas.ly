\version "2.24.0"
% Numbers of stanzas and names of singers are no syllables.
\score {
  <<
    \new Staff \new Voice = "a" { \time 3/4 g'2 e'4 a'2 f'4 g'2. }
    \new Lyrics \lyricsto "a" { \set stanza = "1. " Hi, my name is Bert. }
    \new Lyrics \lyricsto "a" { \set stanza = \markup "2. " \set vocalName = "Be" Oh, ché -- ri, je t'aime }
    \new Lyrics \lyricsto "a" { \set shortVocalName = "x" }
  >>
}
