\version "2.24.0"
% Voices of old notation have beams by hand without being told; their lyrics have lines of their own type.
<<
  \new KievanVoice = "k" { \cadenzaOn c'4 c'8 c'8[ d'8] c'4 c'2 b\longa }
  \new Lyrics \lyricsto "k" { Go -- spo -- di po -- mi -- lui. }
  \new MensuralStaff \new MensuralVoice = "m" { c'4 d'8[ e'] f'2 }
  \new Lyrics \lyricsto "m" { a b c d }
  \new VaticanaStaff \new VaticanaVoice = "v" { c'8 \melisma d' e' f' \melismaEnd g' }
  \new VaticanaLyrics \lyricsto "v" { Do -- mi -- nus }
>>
