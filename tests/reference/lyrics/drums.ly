\version "2.24.0"
<<
  \new DrumStaff \drummode { \new DrumVoice = "d" { bd4 sn8( hh) bd4 ~ bd bd8[ sn] } }
  \new Lyrics \lyricsto "d" { boom tsi boom bam bum }
  \new DrumStaff \drummode { hh4 hh }
  \drums { sn4 sn8 sn } \addlyrics { pa pa pa }
>>
