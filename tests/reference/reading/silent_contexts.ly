\version "2.24.0"
<< \new Staff { c'1 } \new NullVoice { d'1 } \new Devnull { e'1 } \new Dynamics { s1\f } \new RhythmicStaff { c4 } \new TabStaff { c4 } \new Voice { f'1 } >>
