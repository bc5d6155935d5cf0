% common.ily -- house style of the music office of "Lanterns over Hesk"
% Included first by every score, sketch and part of the film.

\version "2.24.0"

% ---- words over the staff -------------------------------------------------
pizz     = ^\markup { \italic "pizz." }
arco     = ^\markup { \italic "arco" }
conSord  = ^\markup { \italic "con sord." }
senSord  = ^\markup { \italic "senza sord." }
divisi   = ^\markup { \italic "div." }
unis     = ^\markup { \italic "unis." }
solo     = ^\markup { \bold "Solo" }
tutti    = ^\markup { \bold "Tutti" }
aDue     = ^\markup { \bold "a 2" }
sulPont  = ^\markup { \italic "sul pont." }
sulTasto = ^\markup { \italic "sul tasto" }
ordin    = ^\markup { \italic "ord." }
espr     = _\markup { \italic "espr." }
dolce    = _\markup { \italic "dolce" }
marcato  = _\markup { \italic "marc." }
lv       = ^\markup { \italic "l.v." }
niente   = _\markup { \italic "al niente" }
gestopft = ^\markup { \italic "stopped" }
softMallets = ^\markup { \italic "soft sticks" }
hardMallets = ^\markup { \italic "hard sticks" }

% ---- paper ----------------------------------------------------------------
\paper {
  top-margin = 12
  bottom-margin = 12
  left-margin = 14
  right-margin = 12
  ragged-last = ##f
  print-all-headers = ##f
}

\header {
  subtitle = "from the short film “Lanterns over Hesk”"
  composer = "Tamsin Orrelby"
  arranger = "orch. Bram Quillifer"
  tagline = ##f
}

% one MIDI channel an instrument name: a full score has more staves than channels
\midi {
  \context {
    \Score
    midiChannelMapping = #'instrument
  }
}

% ---- layout ---------------------------------------------------------------
\layout {
  \context {
    \Score
    \override BarNumber.self-alignment-X = #CENTER
    \override MetronomeMark.font-size = #1
    rehearsalMarkFormatter = #format-mark-box-alphabet
    skipBars = ##t
  }
  \context {
    \Staff
    \numericTimeSignature
  }
  \context {
    \DrumStaff
    \numericTimeSignature
  }
}
