\version "2.24.0"
\relative c'' { \pitchedTrill c2\startTrillSpan des d\stopTrillSpan \harmonicsOn c4 \xNote d b\rest c R1 <c e>4 16 e 8 r 8 q }
