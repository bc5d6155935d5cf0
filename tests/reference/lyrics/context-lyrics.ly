\version "2.24.0"
% The lines stand above the staff first and are filled later.
\score {
  \new ChoirStaff <<
    \new Lyrics = "sopranos" { s1 }
    \new Staff = "women" <<
      \new Voice = "soprano" { \voiceOne c''4 c'' c''8[( b'] c''4) }
      \new Voice = "alto" { \voiceTwo e'4 f' d' e' }
    >>
    \new Lyrics = "altos"
    \context Lyrics = "sopranos" \lyricsto "soprano" { hi hi hi hi }
    \context Lyrics = "altos" \lyricsto "alto" { ha ha ha ha }
  >>
}
