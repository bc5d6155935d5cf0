\version "2.24.0"
<< \new Staff \chordmode { c1:7 d:m f2:maj7/g a:sus4 } \chords { c1 d } \new ChordNames \chordmode { e:m } \drums { bd4 <sn hh> r8 } \new DrumStaff \drummode { cymc2 sne8 ss } >>
