\version "2.24.0"
\include "arabic.ly"
\relative { \key re \bayati do'4 re misb fa sol la sisb do }
