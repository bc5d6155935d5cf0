\version "2.24.0"
\new Staff \chordmode {
  c1 d:m e:min f:aug g:dim a:maj b:sus c:7 d:m7.5- e:m7.5-/+g f:maj9^7/a c:sus4 c:sus2 c:sus g:7sus4
  c:dim7 c:6 c:6.9 c:m6 c:9 c:11 c:13 c:m11 c:13.11 c:maj7 c:maj c:maj13 c:5 c:5.3 c:3 c:1 c:2 c:m5 c:8 c:5.8
  c:7^3 c:13^9.11 c^3 c^5 c/e c/g c/f c/c f:7/es f:7/+es f/a/+c f/+c f/d' cis:m7+ es:7.9-.11+ bes:5+ c:3-.5-.7- c:7-.5- c:7.3
  d:m7/c d:m7/f d:m7/a d:m7/d d:13/c d:13/e c:aug7 c:min7 c:maj9 c:maj7.11+ g:7.13- c:sus4.7 c:m7.11/bes c:9^3/d c:14 c:15 a:10
  c:7 c4.:m c8*2/3:dim fis,1:m fis':7
}
