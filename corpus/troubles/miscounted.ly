% Lanterns over Hesk -- a page of 1m4 as it came from the copy desk, miscounted.
% Broken on purpose: three bars do not add up, and the compiler says so.

\version "2.24.0"
\include "../common.ily"

global = {
  \key f \major
  \time 3/4
  \tempo "Tempo di valse lente" 4 = 96
  s2.*8 | % 1-8
  \bar "|."
}

flute = \relative c'' {
  c4\mp( d8 e f4) | % 1
  a4( g f) |
  e4( d8 c d) | % 3: an eighth short
  c2. |
  f4\<( g a | % 5
  c4. bes8 a g) |
  f4\mf( e d |
  c2.)\fermata | % 8
}

horn = \relative c' {
  f2.\p( | % 1
  f2.) |
  bes4( a g) |
  a2. |
  f4( e f | % 5
  \tuplet 3/2 { g8 a bes } c4 bes a) | % 6: a beat too many
  a4( g bes |
  a2.)\fermata | % 8
}

cello = \relative c {
  \clef bass
  f4\p\pizz c' c | % 1
  d,4 a' a |
  g4 c, c |
  f4 c r | % 4
  d4 a' a |
  c,4 e g |
  bes,4 g' c,4. | % 7: the last crotchet is dotted
  f,2.\arco\fermata | % 8
}

\header {
  title = "1m4  Waltz for the Ferryman"
  instrument = "miscounted"
}

\score {
  \new StaffGroup <<
    \new Staff = "flute" \with {
      instrumentName = "Flute"
      shortInstrumentName = "Fl."
    } << \global \flute >>
    \new Staff = "horn" \with {
      instrumentName = "Horn"
      shortInstrumentName = "Hn."
    } << \global \horn >>
    \new Staff = "cello" \with {
      instrumentName = "Cello"
      shortInstrumentName = "Vc."
    } << \global \cello >>
  >>
  \layout { }
}
