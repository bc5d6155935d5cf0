\version "2.24.0"

% Files included inside blocks of another mode: their words are those of the mode.
\new ChordNames \chordmode { \include "included_chords.ily" }
\new Staff \chordmode { d1 \include "included_chords.ily" e1:m }
\new DrumStaff \drummode { hh4 \include "included_drums.ily" sn4 }
