% 1m2  Across the Flats -- full score (transposed)

\version "2.24.0"
\include "../common.ily"
\include "global.ily"
\include "woodwinds.ily"
\include "brass.ily"
\include "percussion.ily"
\include "harps-keys.ily"
\include "strings.ily"

#(set-global-staff-size 11)

\paper {
  #(set-paper-size "a3")
}

\header {
  title = "1m2  Across the Flats"
}

\score {
  <<
    \new StaffGroup = "woodwinds" <<
      \new Staff = "piccolo" \with {
        instrumentName = "Piccolo"
        shortInstrumentName = "Picc."
      } << \global \piccolo >>
      \new Staff = "flute1" \with {
        instrumentName = "Flute 1"
        shortInstrumentName = "Fl. 1"
      } << \global \fluteOne >>
      \new Staff = "flute2" \with {
        instrumentName = "Flute 2"
        shortInstrumentName = "Fl. 2"
      } << \global \fluteTwo >>
      \new Staff = "oboe1" \with {
        instrumentName = "Oboe 1"
        shortInstrumentName = "Ob. 1"
      } << \global \oboeOne >>
      \new Staff = "oboe2" \with {
        instrumentName = "Oboe 2"
        shortInstrumentName = "Ob. 2"
      } << \global \oboeTwo >>
      \new Staff = "clarinet1" \with {
        instrumentName = "Clarinet 1 in Bb"
        shortInstrumentName = "Cl. 1"
      } << \globalInBflat \clarinetOne >>
      \new Staff = "clarinet2" \with {
        instrumentName = "Clarinet 2 in Bb"
        shortInstrumentName = "Cl. 2"
      } << \globalInBflat \clarinetTwo >>
      \new Staff = "bassclarinet" \with {
        instrumentName = "Bass clarinet in Bb"
        shortInstrumentName = "B. cl."
      } << \globalInBflat \bassClarinet >>
      \new Staff = "bassoon1" \with {
        instrumentName = "Bassoon 1"
        shortInstrumentName = "Bn. 1"
      } << \global \bassoonOne >>
      \new Staff = "bassoon2" \with {
        instrumentName = "Bassoon 2"
        shortInstrumentName = "Bn. 2"
      } << \global \bassoonTwo >>
      \new Staff = "contrabassoon" \with {
        instrumentName = "Contrabassoon"
        shortInstrumentName = "C. bn."
      } << \global \contrabassoon >>
    >>
    \new StaffGroup = "brass" <<
      \new Staff = "horn1" \with {
        instrumentName = "Horn 1 in F"
        shortInstrumentName = "Hn. 1"
      } << \globalInF \hornOne >>
      \new Staff = "horn2" \with {
        instrumentName = "Horn 2 in F"
        shortInstrumentName = "Hn. 2"
      } << \globalInF \hornTwo >>
      \new Staff = "horn3" \with {
        instrumentName = "Horn 3 in F"
        shortInstrumentName = "Hn. 3"
      } << \globalInF \hornThree >>
      \new Staff = "horn4" \with {
        instrumentName = "Horn 4 in F"
        shortInstrumentName = "Hn. 4"
      } << \globalInF \hornFour >>
      \new Staff = "trumpet1" \with {
        instrumentName = "Trumpet 1 in Bb"
        shortInstrumentName = "Tpt. 1"
      } << \globalInBflat \trumpetOne >>
      \new Staff = "trumpet2" \with {
        instrumentName = "Trumpet 2 in Bb"
        shortInstrumentName = "Tpt. 2"
      } << \globalInBflat \trumpetTwo >>
      \new Staff = "trumpet3" \with {
        instrumentName = "Trumpet 3 in Bb"
        shortInstrumentName = "Tpt. 3"
      } << \globalInBflat \trumpetThree >>
      \new Staff = "trombone1" \with {
        instrumentName = "Trombone 1"
        shortInstrumentName = "Tbn. 1"
      } << \global \tromboneOne >>
      \new Staff = "trombone2" \with {
        instrumentName = "Trombone 2"
        shortInstrumentName = "Tbn. 2"
      } << \global \tromboneTwo >>
      \new Staff = "basstrombone" \with {
        instrumentName = "Bass trombone"
        shortInstrumentName = "B. tbn."
      } << \global \bassTrombone >>
      \new Staff = "tuba" \with {
        instrumentName = "Tuba"
        shortInstrumentName = "Tba."
      } << \global \tuba >>
    >>
    \new StaffGroup = "percussion" <<
      \new Staff = "timpani" \with {
        instrumentName = "Timpani"
        shortInstrumentName = "Timp."
      } << \global \timpani >>
      \new DrumStaff = "drums" \with {
        instrumentName = "Percussion"
        shortInstrumentName = "Perc."
      } << \global \percussionOne >>
      \new Staff = "xylo" \with {
        instrumentName = "Xylophone"
        shortInstrumentName = "Xyl."
      } << \global \xylophone >>
    >>
    \new StaffGroup = "harpsAndKeys" <<
      \new Staff = "harp1" \with {
        instrumentName = "Harp 1"
        shortInstrumentName = "Hp. 1"
      } << \global \harpOne >>
      \new PianoStaff = "harp2" \with {
        instrumentName = "Harp 2"
        shortInstrumentName = "Hp. 2"
      } <<
        \new Staff = "harp2u" << \global \harpTwoUpper >>
        \new Staff = "harp2l" << \global \harpTwoLower >>
      >>
      \new PianoStaff = "piano" \with {
        instrumentName = "Piano"
        shortInstrumentName = "Pno."
      } <<
        \new Staff = "pianou" << \global \pianoUpper >>
        \new Staff = "pianol" << \global \pianoLower >>
      >>
    >>
    \new StaffGroup = "strings" <<
      \new Staff = "violin1" \with {
        instrumentName = "Violin I"
        shortInstrumentName = "Vl. I"
      } << \global \violinOne >>
      \new Staff = "violin2" \with {
        instrumentName = "Violin II"
        shortInstrumentName = "Vl. II"
      } << \global \violinTwo >>
      \new Staff = "viola" \with {
        instrumentName = "Viola"
        shortInstrumentName = "Va."
      } << \global \viola >>
      \new Staff = "cello" \with {
        instrumentName = "Cello"
        shortInstrumentName = "Vc."
      } << \global \cello >>
      \new Staff = "bass" \with {
        instrumentName = "Double bass"
        shortInstrumentName = "Db."
      } << \global \doubleBass >>
    >>
  >>
  \layout { }
  \midi { }
}
