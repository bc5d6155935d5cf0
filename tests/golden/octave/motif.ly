\version "2.24.0"

% A motif that is heard directly, and inside of another variable.
motif = { c'4 b }
answer = { g'4 \motif }
phrase = { \motif \answer }
music = { \time 5/4 \phrase | \phrase | \phrase | \motif \motif g' }

\score { \new Staff = "flute" \music }
