% \once before another command before a note behind a variable: the note has the place of the \once.
\version "2.24.0"
x = c'4
y = <c' e'>4
z = { c'4 }
{ \once \hide \x \once \omit \x \once \hide c'4 \once \hide \y \hide \x \once \hideNotes \x \hide \z \once \hide \z \single \hide \x
  \once \override NoteHead.color = #red \x \once \tweak color #red \x }
