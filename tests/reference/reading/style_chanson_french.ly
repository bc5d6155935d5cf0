\version "2.22.0"
\language "français"
chant = \relative do'' {
  \key sol \major \time 2/4 \tempo "Allègrement" 4 = 92
  \partial 8 re,8 | sol sol16 la si8 sol | \tuplet 3/2 4 { la8 si do re do si } | la4. re,8 | fad dod re4 |
  \repeat volta 2 { sol8.[ la16] si8 do | re4( mi8) re | \slurDashed do( si) la4 | \slurSolid }
  \alternative { \volta 1 { sol4. r8 | } \volta 2 { sol2 | } }
  \after 4 \turn sol2 \afterGrace re'2 { mi16[ re] } \fine
}
paroles = \lyricmode { Au | clair de la ru -- | e je m'en | vais chan -- tant ma | pei -- ne.
  La | lune est si bel -- le __ _ ce soir __ }
accords = \chordmode { \partial 8 s8 | sol2 | re:7 | la2:m7/do | re4:sus4 re | sol2*3 }
\score { <<
  \new ChordNames \with { \override ChordName.font-size = #-1 } \accords
  \new Staff { \new Voice = "chant" \chant }
  \new Lyrics \lyricsto "chant" \paroles
>> }
