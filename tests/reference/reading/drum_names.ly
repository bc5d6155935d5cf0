\version "2.24.0"
drumPitchNames.dbass = #'dbass
drumPitchNames.ls = #'sidestick
\drums { dbass4 ls8 bd \parenthesize sn16 \parenthesize r hh <\parenthesize hh sn> }
\new RhythmicStaff { 4 4. r8 | c4 4 }
