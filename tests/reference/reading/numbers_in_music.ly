\version "2.24.0"

% A number from Scheme is no music, though a number can be a note value: \someUnknown #4 { ... } has no note of its own.
\new Staff { c'4 #1 d'8 #4 e' }
\new Staff { c'2 #2 4 #16 d' }
