\version "2.24.0"
scm = \chordmode { e1/d c:m }
\score { << \new ChordNames { \scm } \context Staff { c'1 } >> }
\score { << \new ChordNames { \germanChords \scm } \context Voice { \scm } >> }
\score { << \new DrumStaff \drummode { bd1 } \context Staff { c'1 } >> }
\score { << \new Staff { c'1 } \context Staff { d'1 } \new TabStaff { e1 } >> }
\score { \new DrumStaff \drummode { \context Voice { bd1 } } }
