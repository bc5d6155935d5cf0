\version "2.24.0"
\new Staff \with { instrumentName = "Flute 2" } {
  c'4 d'' e''' f''' |
  bes4 c'' d'' e'' | % want: range bar 2, beat 1, Flute 2: sounding B flat 3 is a whole tone below its lowest note, C4, or B3 at the very most
  c'4 b c' d' | % want: range B3 is a semitone below C4, the usual bottom (some reach B3)
  e''''4 f'''' e'''' cis'''' | % want: range sounding F7 (and 2 more notes in this bar) % want: range C sharp 7 is a semitone above C7
}
